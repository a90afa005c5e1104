import type { Check } from '../../blueprint/schema.ts'
import { isRepeated } from './times-made.ts'

/** Probabilities of what a check may show, summing to one, with that of not being able to tell as the last. */
export const withCannotTell = (check: Check, row: readonly number[]): number[] => {
  const cannotTell = isRepeated(check) ? 0 : check.cannotTell
  const sum = row.reduce((total, p) => total + p, 0)
  return [...row.map((p) => (p / sum) * (1 - cannotTell)), cannotTell]
}
