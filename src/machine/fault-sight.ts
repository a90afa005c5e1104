import type { Blueprint, Check, GradedCheck, MeterCheck } from '../blueprint/schema.ts'
import { meterUncertaintyOhm } from '../engines/belief/index.ts'
import { meterSpec } from '../facts/meters.ts'
import { driveTable } from './drive-table.ts'
import { electricalStates } from './electrical-state.ts'
import { gradedOutcomes } from './graded-outcome.ts'
import { predictMeter, type MeterPrediction, type MeterState } from './meter-outcome.ts'
import { meterTable } from './meter-table.ts'

/**
 * Whether a check tells two faults apart, each alone on a machine; faults by their index in the blueprint. `surely`: in at
 * least half of all cases, and not only now and then.
 */
export type TellsApart = (check: Check, one: number, other: number, surely?: boolean) => boolean

/** Outcomes spread over a graded check more alike than this are the same to a person: one case in twenty differs. Judgement. */
const gradedApart = 0.05
/** The same for the kinds of reading a meter may show: a number, another number, open, jumping. Judgement. */
const meterApart = 0.1
/** From here on a check tells two faults apart for certain enough to open a cover for it. Judgement. */
const surelyApart = 0.5
/** Two readings are told apart when they differ by more than this many standard deviations of their difference. */
const deviationsApart = 2

/**
 * What each check shows of each single fault, worked out once: readings from the circuit, as a budget multimeter and the
 * spread between sound machines let them be told apart, and the tables of looks, air and run checks.
 */
export const tellsApart = (blueprint: Blueprint): TellsApart => {
  const singles = blueprint.faults.map((_, fault) => [fault])
  const electrical = electricalStates(blueprint, singles)
  const meter = meterTable(blueprint, blueprint.plate, electrical.states)
  const drive = driveTable(blueprint, blueprint.plate, electrical.states)
  const mixOf = (fault: number) => electrical.mixes[electrical.mixOf[fault]]
  const rows = new Map(meter.checks.map((check, row) => [check.id, row]))
  const prediction = remembered((check: MeterCheck, fault) =>
    predictMeter(blueprint, meter, rows.get(check.id)!, mixOf(fault)),
  )
  const graded = new Map<string, ReturnType<typeof gradedOutcomes>>()
  const outcomes = remembered((check: GradedCheck, fault) => {
    const make = graded.get(check.id) ?? gradedOutcomes(blueprint, check, drive)
    graded.set(check.id, make)
    return make([fault], mixOf(fault))
  })
  const isSameCircuit = (one: number, other: number): boolean => electrical.mixOf[one] === electrical.mixOf[other]
  return (check, one, other, surely = false) => {
    if (check.kind !== 'meter') {
      return distance(outcomes(check, one), outcomes(check, other)) > (surely ? surelyApart : gradedApart)
    }
    if (isSameCircuit(one, other)) return false
    return readDistance(prediction(check, one), prediction(check, other)) > (surely ? surelyApart : meterApart)
  }
}

/** Keeps what was made for each check and fault. */
const remembered = <C extends Check, T>(make: (check: C, fault: number) => T): ((check: C, fault: number) => T) => {
  const kept = new Map<string, T[]>()
  return (check, fault) => {
    const row = kept.get(check.id) ?? []
    kept.set(check.id, row)
    return (row[fault] ??= make(check, fault))
  }
}

/** Total variation distance of two distributions. */
const distance = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += Math.abs(a[k] - b[k])
  return sum / 2
}

/** In which share of cases the readings that two predictions lead to differ in kind. */
const readDistance = (one: MeterPrediction, other: MeterPrediction): number => {
  const kinds: MeterState[] = []
  const kindOf = (state: MeterState): number => {
    const known = kinds.findIndex((kind) => readAlike(kind, state))
    return known >= 0 ? known : kinds.push(state) - 1
  }
  const all = [...one.states, ...other.states].map(kindOf)
  const shares = ({ states, jumps }: MeterPrediction, from: number): readonly number[] => {
    const sums = kinds.map(() => 0)
    states.forEach(({ share }, i) => (sums[all[from + i]] += share * (1 - jumps)))
    return [...sums, jumps]
  }
  return distance(shares(one, 0), shares(other, one.states.length))
}

const spec = meterSpec('budget-multimeter')
const largestOhm = spec.ranges.at(-1)!.maximumOhm

const readAlike = (a: MeterState, b: MeterState): boolean => {
  const [one, other] = [a.predicted, b.predicted]
  const isOpen = (ohm: number): boolean => ohm > largestOhm
  if (isOpen(one.resistanceOhm) || isOpen(other.resistanceOhm)) {
    const bothOpen = isOpen(one.resistanceOhm) && isOpen(other.resistanceOhm)
    return bothOpen && Math.abs(a.charging - b.charging) <= meterApart
  }
  const meterOhm = (ohm: number): number => meterUncertaintyOhm(spec, ohm + spec.leadOhm)
  const sdOhm = Math.hypot(one.sdOhm, other.sdOhm, meterOhm(one.resistanceOhm), meterOhm(other.resistanceOhm))
  return Math.abs(one.resistanceOhm - other.resistanceOhm) <= deviationsApart * sdOhm
}
