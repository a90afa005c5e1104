import type { Blueprint, MeterCheck } from '../blueprint/schema.ts'
import { compileOhms, makeOhmsTable, nodeIndex, ohmsBetween, type OhmsNetwork } from '../engines/network/index.ts'
import { capacitorsOf, chargeLinks, mayShow, reachOf } from './charging.ts'
import { faultyOhm, soundOhm, type SetUp } from './circuit.ts'
import type { ElectricalState } from './electrical-state.ts'
import type { Plate } from './plate.ts'

/** What every meter check would read in every electrical state. Row-major: check × state. */
export type MeterTable = {
  readonly checks: readonly MeterCheck[]
  readonly stateCount: number
  /** Ohm; infinite when the points are not joined. */
  readonly resistanceOhm: Float64Array
  /** Standard deviation from the spread of the parts' healthy values, ohm. */
  readonly sdOhm: Float64Array
  /** Where the points are not joined: the capacitance between them, farad; 0 where there is none, or they are joined. */
  readonly capacitanceF: Float64Array
}

type Group = {
  readonly setUp: SetUp
  readonly members: readonly { readonly row: number; readonly check: MeterCheck }[]
}

/**
 * Works out the table: one factorisation of the circuit for each set-up and state serves all checks made in that set-up.
 * The spread of a reading is first-order: the share of each element in the reading times the spread of that element.
 */
export const meterTable = (blueprint: Blueprint, plate: Plate, states: readonly ElectricalState[]): MeterTable => {
  const checks = blueprint.checks.filter((check) => check.kind === 'meter')
  const network = compileOhms(blueprint.circuit)
  const resistanceOhm = new Float64Array(checks.length * states.length)
  const sdOhm = new Float64Array(checks.length * states.length)
  const capacitanceF = new Float64Array(checks.length * states.length)
  const table = { checks, stateCount: states.length, resistanceOhm, sdOhm, capacitanceF }
  for (const group of groupBySetUp(checks)) fillGroup(table, group, network, blueprint, plate, states)
  return table
}

const groupBySetUp = (checks: readonly MeterCheck[]): readonly Group[] => {
  const groups = new Map<string, { setUp: SetUp; members: { row: number; check: MeterCheck }[] }>()
  checks.forEach((check, row) => {
    const setUp = { controls: check.controls, unplug: check.unplug }
    const key = JSON.stringify([Object.entries(check.controls).sort(), [...check.unplug].sort()])
    const group = groups.get(key) ?? { setUp, members: [] }
    group.members.push({ row, check })
    groups.set(key, group)
  })
  return [...groups.values()]
}

const fillGroup = (
  table: MeterTable,
  group: Group,
  network: OhmsNetwork,
  blueprint: Blueprint,
  plate: Plate,
  states: readonly ElectricalState[],
): void => {
  const count = blueprint.circuit.length
  const sound = blueprint.circuit.map((element) => soundOhm(element, group.setUp, blueprint, plate))
  const effects = effectsByFault(blueprint, group.setUp)
  const capacitors = capacitorsOf(blueprint, group.setUp)
  const pairs = Int32Array.from(
    group.members.flatMap(({ check }) => [nodeIndex(network, check.red), nodeIndex(network, check.black)]),
  )
  const out = makeOhmsTable(group.members.length, count)
  const ohm = new Float64Array(count)
  const spread = new Float64Array(count)
  const charge = makeOhmsTable(group.members.length, count)
  const links = new Float64Array(count)
  states.forEach((state, stateIndex) => {
    sound.forEach((value, k) => {
      ohm[k] = value.resistanceOhm
      spread[k] = value.spread
    })
    for (const fault of state) {
      for (const { element, becomes } of effects[fault] ?? []) {
        const changed = faultyOhm({ resistanceOhm: ohm[element], spread: spread[element] }, becomes)
        ohm[element] = changed.resistanceOhm
        spread[element] = changed.spread
      }
    }
    ohmsBetween(network, ohm, pairs, out)
    group.members.forEach(({ row }, p) => {
      const at = row * states.length + stateIndex
      table.resistanceOhm[at] = out.resistanceOhm[p]!
      table.sdOhm[at] = spreadOf(out.share, p * count, spread)
    })
    if (!out.resistanceOhm.includes(Infinity) || !mayShow(network, capacitors)) return
    chargeLinks(links, ohm, capacitors, (element) => openedBy(effects, state, element))
    ohmsBetween(network, links, pairs, charge)
    group.members.forEach(({ row }, p) => {
      if (out.resistanceOhm[p] === Infinity)
        table.capacitanceF[row * states.length + stateIndex] = reachOf(charge.resistanceOhm[p])
    })
  })
}

const spreadOf = (share: Float64Array, from: number, spread: Float64Array): number => {
  let variance = 0
  for (let k = 0; k < spread.length; k++) {
    const part = share[from + k] * spread[k]
    variance += part * part
  }
  return Math.sqrt(variance)
}

type Effect = {
  readonly element: number
  readonly becomes: Blueprint['faults'][number]['electrical'][number]['becomes']
}

const openedBy = (effects: readonly (readonly Effect[])[], state: ElectricalState, element: number): boolean =>
  state.some((fault) => effects[fault].some((effect) => effect.element === element && effect.becomes === 'open'))

/** Effects of each fault as element indices; those on an unplugged element are out of the meter's sight. */
const effectsByFault = (blueprint: Blueprint, setUp: SetUp): readonly (readonly Effect[])[] => {
  const index = new Map(blueprint.circuit.map((element, k) => [element.id, k]))
  return blueprint.faults.map((fault) =>
    fault.electrical
      .filter(({ element }) => !setUp.unplug.includes(element))
      .map(({ element, becomes }) => ({ element: index.get(element)!, becomes })),
  )
}

/**
 * What one check reads in one state on a machine whose parts have values of their own, in ohm.
 * @param ownShare factor on an element's resistance, from its id and its spread
 */
export const readInState = (
  blueprint: Blueprint,
  plate: Plate,
  check: MeterCheck,
  state: ElectricalState,
  ownShare: (element: string, spread: number) => number,
): number => {
  const network = compileOhms(blueprint.circuit)
  const setUp: SetUp = { controls: check.controls, unplug: check.unplug }
  const effects = effectsByFault(blueprint, setUp)
  const values = blueprint.circuit.map((element) => soundOhm(element, setUp, blueprint, plate))
  for (const fault of state)
    for (const { element, becomes } of effects[fault] ?? []) values[element] = faultyOhm(values[element], becomes)
  const ohm = Float64Array.from(
    values,
    ({ resistanceOhm, spread }, k) => resistanceOhm * ownShare(blueprint.circuit[k].id, spread),
  )
  const out = makeOhmsTable(1, ohm.length)
  ohmsBetween(network, ohm, Int32Array.of(nodeIndex(network, check.red), nodeIndex(network, check.black)), out)
  return out.resistanceOhm[0]
}
