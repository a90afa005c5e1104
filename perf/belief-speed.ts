import { updateBelief, type Belief, type BeliefEvent, type BeliefProblem } from '../src/engines/belief/index.ts'
import { seededRandom } from '../src/base/random.ts'

const suspects = 1100
const readings = 30
const repeats = 30
const barMs = 20
/** Rounding of some thirty products. */
const sameWithin = 1e-12

/** 1,100 suspects, 30 readings of two kinds, and three repairs among them. */
const makeProblem = (): BeliefProblem => {
  const random = seededRandom(11)
  const numbers = (low: number, high: number) =>
    Array.from({ length: suspects }, () => Math.exp(low + (high - low) * random.uniform()))
  const history = Array.from({ length: readings }, (_, i): BeliefEvent[] => {
    const reading = {
      kind: 'reading',
      id: `r${i}`,
      likelihood: numbers(-8, 1),
      slip: 0.02,
      slipLikelihood: 0.05,
    } as const
    if (i % 10 !== 9) return [reading]
    const becomes = Array.from({ length: suspects }, (_, s) => (random.uniform() < 0.1 ? 0 : s))
    return [reading, { kind: 'change', id: `c${i}`, becomes, success: 0.9 }]
  }).flat()
  return { format: 'thrum-belief-1', prior: numbers(-6, 0), history }
}

type Plain = { readonly probability: readonly number[]; readonly slips: readonly number[] }

/** The textbook way: one pass for the belief, and one more for each reading with that reading taken as a slip. */
const plainBelief = (problem: BeliefProblem): Plain => {
  const all = passOf(problem, null)
  const slips = problem.history
    .filter((event) => event.kind === 'reading')
    .map(({ id }) => sumOf(passOf(problem, id)) / sumOf(all))
  return { probability: all.map((weight) => weight / sumOf(all)), slips }
}

const sumOf = (weights: readonly number[]): number => weights.reduce((a, b) => a + b, 0)

const passOf = ({ prior, history }: BeliefProblem, slipped: string | null): readonly number[] =>
  history.reduce<readonly number[]>((now, event) => {
    if (event.kind === 'change') return changed(now, event.becomes, event.success)
    const { likelihood, slip, slipLikelihood } = event
    const whenSlip = slip * slipLikelihood
    return now.map((w, s) => w * (event.id === slipped ? whenSlip : (1 - slip) * likelihood[s] + whenSlip))
  }, prior)

const changed = (now: readonly number[], becomes: readonly number[], success: number): readonly number[] => {
  const next = now.map((w) => w * (1 - success))
  now.forEach((w, s) => (next[becomes[s]] += w * success))
  return next
}

const medianMs = (work: () => unknown): number => {
  const times = Array.from({ length: repeats }, () => {
    const start = performance.now()
    work()
    return performance.now() - start
  })
  return times.sort((a, b) => a - b)[Math.floor(repeats / 2)]
}

const largestDifference = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Array.from(a).reduce((most, value, i) => Math.max(most, Math.abs(value - b[i])), 0)

/**
 * Milliseconds of one update against the textbook way of doing the same (medians). Throws when the two answers differ, or
 * when an update takes longer than its bar.
 */
export const run = () => {
  const problem = makeProblem()
  assertSame(updateBelief(problem), plainBelief(problem))
  const ours = medianMs(() => updateBelief(problem))
  const theirs = medianMs(() => plainBelief(problem))
  const name = `belief of ${suspects} suspects and ${readings} readings, against a pass per reading`
  return [{ name, ours, theirs, ratio: theirs / ours, bar: barMs }]
}

const assertSame = (belief: Belief, plain: Plain): void => {
  const slips = belief.slips.map((slip) => slip.probability)
  const apart = Math.max(
    largestDifference(belief.probability, plain.probability),
    largestDifference(slips, plain.slips),
  )
  if (!(apart < sameWithin)) throw new Error(`belief and plain reference differ by ${apart}`)
}
