import type { Blueprint, GradedCheck } from '../blueprint/schema.ts'
import type { DriveTable } from './drive-table.ts'
import type { Mix } from './electrical-state.ts'

/** What is left for all other outcomes where the circuit settles the outcome of a run check. */
const settled = 0.98

/**
 * Gives the probability of each outcome of a graded check under a suspect, in the order of the check's outcomes,
 * "could not tell" left out. Faults act independently and what is worst shows: cumulative probabilities multiply (noisy-max).
 * Where the motor would not be driven, the circuit decides instead.
 */
export const gradedOutcomes = (
  blueprint: Blueprint,
  check: GradedCheck,
  drive: DriveTable,
): ((set: readonly number[], mix: Mix) => Float64Array) => {
  const width = check.outcomes.length
  const sound = cumulative(check, check.sound)
  const under = blueprint.faults.map((fault) =>
    fault.id in check.under ? cumulative(check, check.under[fault.id]) : null,
  )
  return (set, mix) => {
    const row = worstShows(width, sound, under, set)
    return check.driven === undefined && check.whenTrips === undefined ? row : underCircuit(check, drive, mix, row)
  }
}

const cumulative = (check: GradedCheck, table: Readonly<Partial<Record<string, number>>>): Float64Array => {
  let sum = 0
  return Float64Array.from(check.outcomes, ({ id }) => (sum += table[id] ?? 0))
}

const worstShows = (
  width: number,
  sound: Float64Array,
  under: readonly (Float64Array | null)[],
  set: readonly number[],
): Float64Array => {
  const product = new Float64Array(width).fill(1)
  let any = false
  for (const fault of set) {
    const row = under[fault]
    if (row === null || row === undefined) continue
    any = true
    for (let k = 0; k < width; k++) product[k] = product[k] * row[k]
  }
  if (!any) product.set(sound)
  for (let k = width - 1; k > 0; k--) product[k] = Math.max(0, product[k] - product[k - 1])
  return product
}

const underCircuit = (check: GradedCheck, drive: DriveTable, mix: Mix, bySymptom: Float64Array): Float64Array => {
  const result = new Float64Array(bySymptom.length)
  for (const { state, share } of mix.states) {
    const { driven, trips } = drive(check.controls, state)
    const otherwise = trips && check.whenTrips !== undefined ? check.whenTrips : notDriven(check, driven)
    for (let k = 0; k < result.length; k++) {
      const p =
        otherwise === null
          ? bySymptom[k]
          : check.outcomes[k].id === otherwise
            ? settled
            : (1 - settled) / (result.length - 1)
      result[k] = result[k] + share * p
    }
  }
  return result
}

const notDriven = (check: GradedCheck, driven: ReadonlySet<string>): string | null =>
  check.driven === undefined || driven.has(check.driven.element) ? null : check.driven.otherwise
