import type { Blueprint } from '../../blueprint/schema.ts'
import type { FunctionCheck, NamedPart } from './function-check.ts'
import { functionById } from './functions-of.ts'
import type { TriedResult } from './tried-result.ts'

/** More parts than this are no one thing that could be missing: all of the air path, the whole machine. */
const mostOfOneThing = 3

/** The part that is missing when a function is not there; null where the function is of many parts, or of none. */
export const mainPart = ({ parts }: Pick<FunctionCheck, 'parts'>): NamedPart | null =>
  parts.length > mostOfOneThing ? null : (parts[0] ?? null)

/** What a trial says: for each suspect, from the probabilities of its check's outcomes, how likely this result is. */
export type TriedEvidence = {
  readonly check: FunctionCheck['check']
  readonly likelihoodOf: (outcomes: ArrayLike<number>) => number
}

/**
 * What a trial of a function says of the suspects, by the same table as the readings of a graded check: good is the first
 * outcome, bad any other but that nothing runs, where a check was made for the function. Null where it says nothing: the function is not known here, not there, or could not be told.
 */
export const triedEvidence = (blueprint: Blueprint, id: string, result: TriedResult): TriedEvidence | null => {
  const known = result === 'good' || result === 'bad' ? functionById(blueprint, id) : undefined
  if (known === undefined) return null
  return {
    check: known.check,
    likelihoodOf: (outcomes) => {
      const good = outcomes[0] ?? 0
      if (result === 'good') return good
      return known.isReading ? 1 - good : (outcomes[1] ?? 0)
    },
  }
}
