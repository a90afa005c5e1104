import type { Blueprint, GradedCheck } from '../blueprint/schema.ts'
import { solveAc, type NetworkElement } from '../engines/network/index.ts'
import { runningElement, type SetUp } from './circuit.ts'
import type { ElectricalState } from './electrical-state.ts'
import type { Plate } from './plate.ts'

/** What the mains would do in one set-up and one electrical state. */
export type Drive = {
  /** Elements that carry enough of their working current to do their work. */
  readonly driven: ReadonlySet<string>
  /** The supply's protection or the plug fuse goes. */
  readonly trips: boolean
}

/** Does a motor turn: at least this share of its working current. Below it a series motor only hums or stands. */
const drivenShare = 0.6
/** A short: more than this many times the whole machine's working current. */
const tripTimes = 8

/**
 * For each run or air check that something must be driven for, and each electrical state: what the mains would do.
 * Worked out with the AC network at the plate's voltage and frequency. Nobody measures this; it says what running would show.
 */
export const driveTable = (blueprint: Blueprint, plate: Plate, states: readonly ElectricalState[]) => {
  const bySetUp = new Map<string, readonly Drive[]>()
  return (check: GradedCheck, state: number): Drive => {
    const setUp: SetUp = { controls: check.controls, unplug: [] }
    const key = JSON.stringify(Object.entries(check.controls).sort())
    let drives = bySetUp.get(key)
    if (drives === undefined) {
      const work = workingCurrents(blueprint, plate, setUp)
      drives = states.map((faults) => driveOf(blueprint, plate, setUp, faults, work))
      bySetUp.set(key, drives)
    }
    return drives[state]!
  }
}

export type DriveTable = ReturnType<typeof driveTable>

type Currents = { readonly byElement: ReadonlyMap<string, number>; readonly supplyA: number }

const supplyId = '(supply)'

const currents = (blueprint: Blueprint, plate: Plate, setUp: SetUp, faults: ElectricalState): Currents | null => {
  const effects = new Map(faults.flatMap((f) => blueprint.faults[f]!.electrical.map((e) => [e.element, e.becomes] as const)))
  const elements = blueprint.circuit
    .map((element) => runningElement(element, setUp, blueprint, plate, effects.get(element.id) ?? null))
    .filter((element): element is NetworkElement => element !== null)
  const supply: NetworkElement = { kind: 'voltage-source', id: supplyId, from: blueprint.supply.line, to: blueprint.supply.neutral, voltageV: plate.voltageV, phaseRad: 0 }
  const solution = solveAc({ format: 'thrum-network-1', elements: [supply, ...elements] }, plate.frequencyHz)
  if (solution.kind !== 'solved') return null
  const size = (id: string): number => Math.hypot(solution.current[id]?.re ?? 0, solution.current[id]?.im ?? 0)
  return { byElement: new Map(elements.map((element) => [element.id, size(element.id)])), supplyA: size(supplyId) }
}

/** What each motor draws on a sound machine with every control in a position that drives it. */
const workingCurrents = (blueprint: Blueprint, plate: Plate, setUp: SetUp): Currents =>
  currents(blueprint, plate, setUp, []) ?? { byElement: new Map(), supplyA: 0 }

const driveOf = (blueprint: Blueprint, plate: Plate, setUp: SetUp, faults: ElectricalState, work: Currents): Drive => {
  const now = currents(blueprint, plate, setUp, faults)
  // An ideal short across the supply has no solution: that is a trip too.
  if (now === null || now.supplyA > tripTimes * (plate.powerW / plate.voltageV)) return { driven: new Set(), trips: true }
  const driven = blueprint.circuit
    .filter((element) => element.kind === 'motor' && (work.byElement.get(element.id) ?? 0) > 0)
    .filter((element) => (now.byElement.get(element.id) ?? 0) >= drivenShare * (work.byElement.get(element.id) ?? 0))
  return { driven: new Set(driven.map((element) => element.id)), trips: false }
}
