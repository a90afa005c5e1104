import type { Blueprint, GradedCheck } from '../blueprint/schema.ts'
import type { DriveTable } from './drive-table.ts'
import type { StateMix } from './electrical-state.ts'

/** What is left for all other outcomes where the circuit settles the outcome of a run check. */
const settled = 0.98

/**
 * Probability of each outcome of a graded check under one suspect, in the order of the check's outcomes, "could not tell" left out.
 * Faults act independently and what is worst shows: the cumulative probabilities multiply (noisy-max).
 * Where the motor would not be driven, the circuit decides instead.
 */
export const gradedProbabilities = (
  blueprint: Blueprint,
  check: GradedCheck,
  set: readonly number[],
  mix: StateMix,
  drive: DriveTable,
): number[] => {
  const bySymptom = worstShows(blueprint, check, set)
  if (check.driven === undefined && check.whenTrips === undefined) return bySymptom
  const result = check.outcomes.map(() => 0)
  for (const { state, share } of mix) {
    const { driven, trips } = drive(check, state)
    const otherwise = trips && check.whenTrips !== undefined ? check.whenTrips : notDriven(check, driven)
    const part = otherwise === null ? bySymptom : settle(check, otherwise)
    part.forEach((p, i) => (result[i] = result[i]! + share * p))
  }
  return result
}

const notDriven = (check: GradedCheck, driven: ReadonlySet<string>): string | null =>
  check.driven === undefined || driven.has(check.driven.element) ? null : check.driven.otherwise

const settle = (check: GradedCheck, outcome: string): number[] =>
  check.outcomes.map(({ id }) => (id === outcome ? settled : (1 - settled) / (check.outcomes.length - 1)))

const worstShows = (blueprint: Blueprint, check: GradedCheck, set: readonly number[]): number[] => {
  const active = set.map((index) => check.under[blueprint.faults[index]!.id]).filter((table) => table !== undefined)
  const tables = active.length === 0 ? [check.sound] : active
  const cumulative = check.outcomes.map((_, k) =>
    tables.reduce((product, table) => product * check.outcomes.slice(0, k + 1).reduce((sum, { id }) => sum + (table[id] ?? 0), 0), 1),
  )
  return cumulative.map((value, k) => Math.max(0, value - (cumulative[k - 1] ?? 0)))
}
