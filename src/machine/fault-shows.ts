import type { Check, GradedCheck, MeterCheck } from '../blueprint/schema.ts'
import type { MeterSpec } from '../engines/belief/index.ts'
import { bandProbabilities, bandsOf } from './bands.ts'
import type { MachineModel } from './model.ts'
import { resultText } from './move-view.ts'

/** One check that shows a fault: its most telling result when this fault alone is there. */
export type Showing = {
  readonly check: string
  /** What it then shows, and what it shows on a sound machine, in words. */
  readonly text: string
  readonly soundText: string
  /** Probability of that result with the fault. */
  readonly comes: number
  /** Probability that the fault is there once that result has come, on a machine bought as faulty with one fault at most. */
  readonly sure: number
}

export type FaultShows = { readonly fault: string; readonly checks: readonly Showing[] }

/**
 * A check shows a fault when what it shows with it and without it differs by this much (total variation distance, from 0 for
 * alike to 1 for never alike). Judgement.
 */
const leastDistance = 0.2

/** The suspects with one fault at most: the sound machine first, then each fault in the blueprint's order. */
type Singles = { readonly suspects: readonly number[]; readonly prior: readonly number[] }

/** Probabilities of a check's results for each single suspect, worked out when asked for. */
type Rows = (single: number) => ArrayLike<number>

/**
 * Which checks show each fault, near the part or far from it, the surest first: meter readings and outcomes of runs are
 * worked out from the circuit. Faults that bar running are shown by looks and by the meter alone.
 */
export const faultShows = (model: MachineModel, meter: MeterSpec): readonly FaultShows[] => {
  const singles = singlesOf(model)
  return model.blueprint.faults.map((fault, index) => ({
    fault: fault.id,
    checks: model.blueprint.checks
      .filter(({ kind }) => fault.danger === undefined || kind === 'meter' || kind === 'look')
      .flatMap((check) => showing(model, meter, singles, check, index + 1))
      .toSorted((a, b) => b.sure * b.comes - a.sure * a.comes),
  }))
}

const singlesOf = ({ sets, prior, blueprint }: MachineModel): Singles => {
  const suspects = [
    0,
    ...blueprint.faults.map((_, index) => sets.findIndex((set) => set.length === 1 && set[0] === index)),
  ]
  return { suspects, prior: suspects.map((suspect) => prior[suspect]) }
}

const showing = (
  model: MachineModel,
  meter: MeterSpec,
  singles: Singles,
  check: Check,
  single: number,
): readonly Showing[] => {
  const rows =
    check.kind === 'meter' ? meterRows(model, meter, singles, check, single) : gradedRows(model, singles, check)
  const [without, with_] = [rows(0), rows(single)]
  const moved = Array.from(with_, (p, k) => p - without[k])
  if (moved.reduce((sum, p) => sum + Math.abs(p), 0) / 2 < leastDistance) return []
  const result = moved.indexOf(Math.max(...moved))
  const joint = singles.prior.map((p, other) => p * rows(other)[result])
  return [
    {
      check: check.id,
      text: check.kind === 'meter' ? resultText(model, check, singles.suspects[single]) : check.outcomes[result].name,
      soundText: resultText(model, check, 0),
      comes: with_[result],
      sure: joint[single] / joint.reduce((sum, p) => sum + p, 0),
    },
  ]
}

const gradedRows =
  (model: MachineModel, { suspects }: Singles, check: GradedCheck): Rows =>
  (single) =>
    model.graded(check, suspects[single])

/** Results: bands of ohms that tell the fault from a sound machine, open, and jumps. */
const meterRows = (
  model: MachineModel,
  meter: MeterSpec,
  { suspects }: Singles,
  check: MeterCheck,
  fault: number,
): Rows => {
  const row = model.meter.checks.findIndex(({ id }) => id === check.id)
  const predictionOf = (single: number) => model.predict(row, model.electrical.mixOf[suspects[single]])
  const bands = bandsOf([0, fault].map((single) => ({ prediction: predictionOf(single), weight: 0.5 })))
  return (single) => {
    const prediction = predictionOf(single)
    return [...bandProbabilities(meter, bands, prediction), prediction.jumps]
  }
}
