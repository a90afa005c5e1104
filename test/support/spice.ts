/**
 * ngspice (the eecircuit-engine package, a WebAssembly build) as an independent witness for electrical networks.
 * Many networks go into one netlist side by side, since starting a run costs more than solving a network.
 */
import { Simulation } from 'eecircuit-engine'
import type { NetworkElement } from '../../src/engines/network/index.ts'
import { Netlist } from './netlist.ts'

export type SpiceComplex = { readonly re: number; readonly im: number }
type Probe = readonly [string, string]

/** Resistances only: 0 an ideal link, Infinity absent. */
export type ResistanceCase = {
  readonly elements: readonly { readonly from: string; readonly to: string; readonly resistanceOhm: number }[]
  readonly probes: readonly Probe[]
}

/** A network of any elements; a network that is probed has no sources. */
export type ImpedanceCase = { readonly elements: readonly NetworkElement[]; readonly probes: readonly Probe[] }

/** Networks in one netlist. Up to here more of them save time; from about a hundred on each takes longer. */
const networksAtOnce = 40
/** A node without a path to ground is held there by 10¹² Ω, so that what it reads can only mean open. */
const openOhm = 1e8

/** Resistance in Ω between each pair of nodes by ngspice; Infinity when it reads more than 10⁸ Ω. */
export const spiceResistances = async (
  elements: ResistanceCase['elements'],
  probes: readonly Probe[],
): Promise<number[]> => (await spiceResistanceBatch([{ elements, probes }]))[0]

/** As {@link spiceResistances} for many networks at once: a list of readings for each. */
export const spiceResistanceBatch = async (cases: readonly ResistanceCase[]): Promise<number[][]> => {
  const asElements = cases.map(({ elements, probes }) => ({
    elements: elements.flatMap((element, k): NetworkElement[] =>
      element.resistanceOhm === Infinity ? [] : [{ kind: 'resistor', id: `r${k}`, ...element }],
    ),
    probes,
  }))
  const readings = await probeAll(asElements, null)
  return readings.map((list) => list.map(({ re }) => (re > openOhm ? Infinity : re)))
}

/**
 * How the resistance between two nodes moves with the logarithm of each resistance, in Ω, by ngspice's sensitivity
 * analysis (a difference quotient, good to about five digits). For a network in one piece without links or open elements.
 */
export const spiceShares = async (elements: ResistanceCase['elements'], [from, to]: Probe): Promise<number[]> => {
  const names = [
    to,
    ...new Set(elements.flatMap((element) => [element.from, element.to]).filter((name) => name !== to)),
  ]
  const place = (name: string): string => (name === to ? '0' : `n${names.indexOf(name)}`)
  const lines = elements.map((one, k) => `r${k} ${place(one.from)} ${place(one.to)} ${one.resistanceOhm}`)
  const values = await spiceRun(
    ['shares', ...lines, `i0 0 ${place(from)} dc 1`, `.sens v(${place(from)})`, '.end', ''].join('\n'),
  )
  return elements.map((element, k) => element.resistanceOhm * valueOf(values, `v(r${k})`).re)
}

/** Complex impedance in Ω between each pair of nodes at one frequency by ngspice. */
export const spiceAc = (cases: readonly ImpedanceCase[], frequencyHz: number): Promise<SpiceComplex[][]> =>
  probeAll(cases, frequencyHz)

/** Voltage of every node against `reference` by ngspice; at DC when the frequency is null. */
export const spiceVoltages = async (
  cases: readonly { readonly elements: readonly NetworkElement[]; readonly reference: string }[],
  frequencyHz: number | null,
): Promise<Map<string, SpiceComplex>[]> => {
  const netlist = new Netlist(frequencyHz)
  const saved = cases.map(({ elements, reference }) => {
    const place = netlist.addNetwork(elements, reference)
    const names = [...new Set(elements.flatMap((element) => [element.from, element.to]))]
    return names.map((name) => [name, netlist.save(place(name))] as const)
  })
  const values = await spiceRun(netlist.text())
  return saved.map((nodes) => new Map(nodes.map(([name, saving]) => [name, valueOf(values, saving)])))
}

/** Equal networks probed alike are run once: ngspice reads the same of the same netlist. */
const probeAll = async (cases: readonly ImpedanceCase[], frequencyHz: number | null): Promise<SpiceComplex[][]> => {
  const jobs = new Map<string, { readonly elements: readonly NetworkElement[]; readonly probe: Probe }>()
  const keys = cases.map(({ elements, probes }) => {
    const network = elements.map((element) => Object.values(element).join(' ')).join('\n')
    return probes.map((probe) => {
      const key = `${network}\n${probe.join(' ')}`
      jobs.set(key, { elements, probe })
      return key
    })
  })
  const asked = [...jobs]
  const readings = new Map<string, SpiceComplex>()
  for (let first = 0; first < asked.length; first += networksAtOnce) {
    const some = asked.slice(first, first + networksAtOnce)
    const read = await probeSome(some.map(([, job]) => job), frequencyHz) // prettier-ignore
    some.forEach(([key], at) => readings.set(key, read[at]))
  }
  return keys.map((list) => list.map((key) => readings.get(key)!))
}

/** Each probe gets a copy of its network with the second node at ground and 1 A fed into the first. */
const probeSome = async (
  jobs: readonly { readonly elements: readonly NetworkElement[]; readonly probe: Probe }[],
  frequencyHz: number | null,
): Promise<SpiceComplex[]> => {
  const netlist = new Netlist(frequencyHz)
  const saved = jobs.map(({ elements, probe: [from, to] }) => {
    const test: NetworkElement = { kind: 'current-source', id: 'test', from: to, to: from, currentA: 1, phaseRad: 0 }
    return netlist.save(netlist.addNetwork([...elements, test], to)(from))
  })
  const values = await spiceRun(netlist.text())
  return saved.map((saving) => valueOf(values, saving))
}

const valueOf = (values: ReadonlyMap<string, SpiceComplex>, saving: string): SpiceComplex => {
  if (saving === 'v(0)') return { re: 0, im: 0 }
  const value = values.get(saving)
  if (value === undefined) throw new Error(`ngspice gave no ${saving}`)
  return value
}

let started: ReturnType<typeof start> | undefined
let busy: Promise<unknown> = Promise.resolve()

/** Runs a netlist and gives the last value of every saved quantity. Throws when ngspice complains of anything. */
export const spiceRun = (netlist: string): Promise<Map<string, SpiceComplex>> => {
  const run = busy.then(() => runAlone(netlist))
  busy = run.catch(() => undefined)
  return run
}

const runAlone = async (netlist: string): Promise<Map<string, SpiceComplex>> => {
  started ??= start()
  const { simulation, itsWindow } = await started
  simulation.setNetList(netlist)
  Reflect.set(globalThis, 'window', itsWindow)
  const result = await simulation.runSim().finally(hideWindow)
  // After a failed run the engine still hands out the result of the run before.
  const complaints = simulation.getError().filter((line) => /error|warning|abort|singular/i.test(line))
  if (complaints.length > 0) throw new Error(complaints.join('\n'))
  if (result.dataType === 'real') {
    return new Map(result.data.map(({ name, values }) => [name, { re: values[values.length - 1], im: 0 }]))
  }
  return new Map(
    result.data.map(({ name, values }) => {
      const last = values[values.length - 1]
      return [name, { re: last.real, im: last.img }]
    }),
  )
}

const start = async () => {
  const simulation = new Simulation()
  await simulation.start()
  const itsWindow: unknown = Reflect.get(globalThis, 'window')
  hideWindow()
  return { simulation, itsWindow }
}

/** The engine makes itself a `window`, for which every later test in this process would take itself to be on a page. */
const hideWindow = (): void => void Reflect.deleteProperty(globalThis, 'window')
