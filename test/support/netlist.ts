import type { NetworkElement } from '../../src/engines/network/index.ts'

/** Resistances below this are written as a voltage set by a current: ngspice would put their large conductance beside small ones. */
const smallOhm = 1

/** A SPICE netlist that holds any number of separate networks. Voltages and currents of the sources are put in at DC or at AC. */
export class Netlist {
  private readonly lines: string[] = []
  private readonly saves = new Set<string>()
  private readonly frequencyHz: number | null
  private nodes = 0
  private parts = 0

  /** @param frequencyHz null for DC */
  constructor(frequencyHz: number | null) {
    this.frequencyHz = frequencyHz
  }

  /** Adds a network; gives a function from its node names to those in the netlist. The reference becomes node 0. */
  addNetwork(elements: readonly NetworkElement[], reference: string): (node: string) => string {
    const place = this.places(reference)
    const links = new Groups()
    const wired = new Groups()
    for (const element of elements) {
      const [a, b] = [place(element.from), place(element.to)]
      const conducts = this.add(element, a, b, () => links.unite(a, b))
      if (conducts && element.kind !== 'current-source') wired.unite(a, b)
    }
    const names = [...new Set(elements.flatMap((element) => [element.from, element.to]))].map(place)
    // What hangs on nothing at all hangs on capacitors alone too: holding it twice would be a loop of inductors.
    if (this.frequencyHz !== null) this.holdAtDc(elements, names, place)
    else for (const node of names) if (wired.unite('0', node)) this.hold(node)
    return place
  }

  /** Asks for the voltage of a node of the netlist; gives the name under which the result has it. */
  save(node: string): string {
    if (node !== '0') this.saves.add(`v(${node})`)
    return `v(${node})`
  }

  text(): string {
    const analysis = this.frequencyHz === null ? '.op' : `.ac lin 1 ${this.frequencyHz} ${this.frequencyHz}`
    const saves = [...this.saves].map((saving) => `.save ${saving}`)
    return ['networks', ...this.lines, ...saves, analysis, '.end', ''].join('\n')
  }

  /** Writes an element; false when it is open. `joins` says whether an ideal link is the first to join its ends. */
  private add(element: NetworkElement, a: string, b: string, joins: () => boolean): boolean {
    switch (element.kind) {
      case 'resistor':
        return this.resistance(a, b, element.resistanceOhm, joins)
      case 'switch':
        return element.closed && this.resistance(a, b, element.contactOhm, joins)
      case 'fuse':
        return element.intact && this.resistance(a, b, element.resistanceOhm, joins)
      case 'triac':
        if (element.on) return this.resistance(a, b, element.onOhm, joins)
        return element.offOhm !== null && this.resistance(a, b, element.offOhm, joins)
      case 'capacitor':
        if (this.frequencyHz === null || element.capacitanceF === 0) return false
        return this.line('c', a, b, `${element.capacitanceF}`)
      case 'inductor':
        return this.coil(a, b, element.resistanceOhm, element.inductanceH, joins)
      case 'motor':
        return this.motor(element, a, b, joins)
      case 'voltage-source':
        return this.line('v', a, b, this.sourceValue(element.voltageV, element.phaseRad))
      case 'current-source':
        return this.line('i', a, b, this.sourceValue(element.currentA, element.phaseRad))
    }
  }

  private motor(element: NetworkElement & { kind: 'motor' }, a: string, b: string, joins: () => boolean): boolean {
    const ohm = element.resistanceOhm + element.backEmfOhm
    if (element.backEmfV === 0) return this.coil(a, b, ohm, element.inductanceH, joins)
    const between = this.newNode()
    this.coil(a, between, ohm, element.inductanceH, () => true)
    return this.line('v', between, b, this.sourceValue(element.backEmfV, 0))
  }

  private coil(a: string, b: string, ohm: number, inductanceH: number, joins: () => boolean): boolean {
    if (this.frequencyHz === null || inductanceH === 0) return this.resistance(a, b, ohm, joins)
    if (ohm === 0) return this.line('l', a, b, `${inductanceH}`)
    const between = this.newNode()
    this.resistance(a, between, ohm, () => true)
    return this.line('l', between, b, `${inductanceH}`)
  }

  /** An ideal link that closes a loop of ideal links is left out: SPICE has no answer to how they share the current. */
  private resistance(a: string, b: string, ohm: number, joins: () => boolean): boolean {
    if (ohm >= smallOhm) return this.line('r', a, b, `${ohm}`)
    if (ohm === 0) return joins() ? this.line('v', a, b, '0') : true
    const between = this.newNode()
    this.line('v', between, b, '0')
    const meter = `v${this.parts - 1}`
    return this.line('h', a, between, `${meter} ${ohm}`)
  }

  private line(letter: string, a: string, b: string, rest: string): true {
    this.lines.push(`${letter}${this.parts++} ${a} ${b} ${rest}`)
    return true
  }

  private sourceValue(size: number, phaseRad: number): string {
    return this.frequencyHz === null ? `dc ${size}` : `dc 0 ac ${size} ${(phaseRad * 180) / Math.PI}`
  }

  private hold(node: string): void {
    if (this.frequencyHz === null) this.line('r', node, '0', '1e12')
    else this.line('l', node, '0', '1e12')
  }

  /** ngspice solves for DC before it goes to AC; an inductor of 10¹² H holds parts that hang on capacitors alone. */
  private holdAtDc(
    elements: readonly NetworkElement[],
    names: readonly string[],
    place: (node: string) => string,
  ): void {
    const wired = new Groups()
    const open = (element: NetworkElement): boolean =>
      element.kind === 'capacitor' ||
      element.kind === 'current-source' ||
      (element.kind === 'switch' && !element.closed) ||
      (element.kind === 'fuse' && !element.intact) ||
      (element.kind === 'triac' && !element.on && element.offOhm === null)
    for (const element of elements) if (!open(element)) wired.unite(place(element.from), place(element.to))
    for (const node of names) if (wired.unite('0', node)) this.hold(node)
  }

  private places(reference: string): (node: string) => string {
    const known = new Map([[reference, '0']])
    return (node) => {
      const place = known.get(node) ?? this.newNode()
      known.set(node, place)
      return place
    }
  }

  private newNode(): string {
    return `n${this.nodes++}`
  }
}

/** Names that are joined to each other. */
class Groups {
  private readonly parent = new Map<string, string>()

  unite(a: string, b: string): boolean {
    const [rootA, rootB] = [this.root(a), this.root(b)]
    if (rootA !== rootB) this.parent.set(rootB, rootA)
    return rootA !== rootB
  }

  private root(name: string): string {
    const above = this.parent.get(name)
    return above === undefined ? name : this.root(above)
  }
}
