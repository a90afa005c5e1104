import type { Blueprint } from '../blueprint/schema.ts'
import { compileOhms, makeOhmsTable, nodeIndex, ohmsBetween } from '../engines/network/index.ts'
import { runningOhm, type SetUp } from './circuit.ts'
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

type Currents = { readonly elementA: Float64Array; readonly supplyA: number }

/** Gives what the mains would do for a set-up of controls and an electrical state; worked out when first asked for. */
export type DriveTable = (controls: Readonly<Record<string, string>>, state: number) => Drive

/**
 * What running would show, from the circuit at the plate's voltage. Nobody measures this.
 * Impedances are added by their size: at a power factor of 0.97 that is within 3 % of the phasor sum, and the question is
 * only whether a motor gets more than about half of its current.
 */
export const driveTable = (blueprint: Blueprint, plate: Plate, states: readonly ElectricalState[]): DriveTable => {
  const network = compileOhms(blueprint.circuit)
  const out = makeOhmsTable(1, blueprint.circuit.length)
  const supply = Int32Array.of(nodeIndex(network, blueprint.supply.line), nodeIndex(network, blueprint.supply.neutral))
  const elementOhm = new Float64Array(blueprint.circuit.length)
  const currents = (setUp: SetUp, faults: ElectricalState): Currents => {
    fillOhms(elementOhm, blueprint, plate, setUp, faults)
    ohmsBetween(network, elementOhm, supply, out)
    const supplyA = plate.voltageV / out.resistanceOhm[0]
    return {
      supplyA,
      elementA: out.share.map((share, k) => (share > 0 ? Math.sqrt(share / elementOhm[k]) * supplyA : 0)),
    }
  }
  const bySetUp = new Map<string, { work: Currents; drives: (Drive | undefined)[]; setUp: SetUp }>()
  return (controls, state) => {
    const key = Object.entries(controls).sort().join(';')
    let kept = bySetUp.get(key)
    if (kept === undefined) {
      const setUp = { controls, unplug: [] }
      kept = { setUp, work: currents(setUp, []), drives: [] }
      bySetUp.set(key, kept)
    }
    return (kept.drives[state] ??= driveOf(blueprint, plate, currents(kept.setUp, states[state]), kept.work))
  }
}

const fillOhms = (
  elementOhm: Float64Array,
  blueprint: Blueprint,
  plate: Plate,
  setUp: SetUp,
  faults: ElectricalState,
): void => {
  const effects = new Map(
    faults.flatMap((f) => blueprint.faults[f].electrical.map((e) => [e.element, e.becomes] as const)),
  )
  blueprint.circuit.forEach((element, k) => {
    elementOhm[k] = runningOhm(element, setUp, blueprint, plate, effects.get(element.id) ?? null)
  })
}

const driveOf = (blueprint: Blueprint, plate: Plate, now: Currents, work: Currents): Drive => {
  if (now.supplyA > tripTimes * (plate.powerW / plate.voltageV)) return { driven: new Set(), trips: true }
  const driven = blueprint.circuit.filter(
    (element, k) =>
      element.kind === 'motor' && work.elementA[k] > 0 && now.elementA[k] >= drivenShare * work.elementA[k],
  )
  return { driven: new Set(driven.map((element) => element.id)), trips: false }
}
