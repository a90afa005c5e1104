import type { BeliefEvent, BeliefProblem } from '../../src/engines/belief/index.ts'

/** All sets of `count` faults, the empty set first. */
export const everySet = (count: number): readonly (readonly number[])[] =>
  Array.from({ length: 2 ** count }, (_, mask) =>
    Array.from({ length: count }, (_, i) => i).filter((i) => (mask >> i) & 1),
  )

/** A reading that cannot be a slip. */
export const surely = (id: string, likelihood: readonly number[]): BeliefEvent => ({
  kind: 'reading',
  id,
  likelihood: [...likelihood],
  slip: 0,
  slipLikelihood: 1,
})

export const beliefProblem = (prior: Iterable<number>, history: readonly BeliefEvent[]): BeliefProblem => ({
  format: 'thrum-belief-1',
  prior: [...prior],
  history: [...history],
})

/** Probability that each fault is in the true set. */
export const marginals = (probability: Float64Array, sets: readonly (readonly number[])[], count: number): number[] =>
  Array.from({ length: count }, (_, fault) =>
    sets.reduce((sum, set, s) => sum + (set.includes(fault) ? probability[s] : 0), 0),
  )
