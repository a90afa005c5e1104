import { logAdd, logSum, logSumOfSums } from './log-sum.ts'
import type { Belief, BeliefEvent, BeliefProblem } from './schema.ts'

type Reading = Extract<BeliefEvent, { kind: 'reading' }>
type Change = Extract<BeliefEvent, { kind: 'change' }>

/** What the forward pass keeps of a reading for the backward pass. All logarithms are natural. */
type Kept = {
  /** Log weight of each suspect just before the reading. */
  readonly before: Float64Array
  /** Log of what the reading multiplies each weight by. */
  readonly factor: Float64Array
  /** No suspect allows it and a slip is ruled out: it is set aside as a slip. */
  readonly setAside: boolean
}

/** A reading whose slip is likelier than not is one that no suspect explains well. */
const unexplainedAbove = 0.5

/**
 * The exact posterior over suspects after all that happened, in order. A reading multiplies each suspect's weight by
 * (1 − slip) · likelihood + slip · slipLikelihood; a change moves the share `success` of each suspect's weight to the
 * suspect it becomes. The probability that each reading was a slip takes account of all other readings, earlier and
 * later (forward–backward recursion for hidden Markov chains, Rabiner 1989, in logarithms so that nothing underflows).
 *
 * `unexplained` is the reading with the greatest probability of being a slip, if that is above one half, else null.
 * A reading that no suspect allows at all while its slip is 0 is set aside: the belief stays as it was, its slip
 * probability is 1, and `logEvidence` is −Infinity.
 *
 * Takes a checked problem; time is proportional to suspects × events.
 */
export const updateBelief = (problem: BeliefProblem): Belief => {
  const { history } = problem
  const { weight, kept, isContradicted } = forward(problem)
  const total = logSum(weight)
  const slips = slipProbabilities(history, kept, total, weight.length)
  return {
    probability: normalised(weight, total),
    logEvidence: isContradicted ? -Infinity : total,
    slips,
    unexplained: mostSurprising(slips),
  }
}

type Forward = {
  readonly weight: Float64Array
  readonly kept: readonly (Kept | null)[]
  readonly isContradicted: boolean
}

const forward = (problem: BeliefProblem): Forward => {
  let weight = logPrior(problem.prior)
  let isContradicted = false
  const kept = problem.history.map((event): Kept | null => {
    if (event.kind === 'change') {
      weight = afterChange(weight, event)
      return null
    }
    const factor = logFactor(event)
    const after = weight.map((value, s) => value + factor[s])
    const setAside = after.every((value) => value === -Infinity)
    const entry = { before: weight, factor: setAside ? new Float64Array(weight.length) : factor, setAside }
    if (setAside) isContradicted = true
    else weight = after
    return entry
  })
  return { weight, kept, isContradicted }
}

const logPrior = (prior: readonly number[]): Float64Array => {
  const logs = Float64Array.from(prior, Math.log)
  const total = logSum(logs)
  return logs.map((value) => value - total)
}

const logFactor = ({ likelihood, slip, slipLikelihood }: Reading): Float64Array => {
  const whenSlip = slip * slipLikelihood
  return Float64Array.from(likelihood, (value) => Math.log((1 - slip) * value + whenSlip))
}

const afterChange = (weight: Float64Array, { becomes, success }: Change): Float64Array => {
  const next = new Float64Array(weight.length).fill(-Infinity)
  const logSuccess = Math.log(success)
  const logFailure = Math.log1p(-success)
  weight.forEach((value, s) => {
    const to = becomes[s]
    if (to === s) {
      next[s] = logAdd(next[s], value)
      return
    }
    next[to] = logAdd(next[to], value + logSuccess)
    next[s] = logAdd(next[s], value + logFailure)
  })
  return next
}

/** Walks back through the events carrying, for each suspect, the log probability of everything that came later. */
const slipProbabilities = (
  history: readonly BeliefEvent[],
  kept: readonly (Kept | null)[],
  total: number,
  suspects: number,
): Belief['slips'] => {
  const slips: { id: string; probability: number }[] = []
  let later = new Float64Array(suspects)
  for (let i = history.length - 1; i >= 0; i--) {
    const event = history[i]
    if (event.kind === 'change') {
      later = beforeChange(later, event)
      continue
    }
    const { before, factor, setAside } = kept[i]!
    const logSlip = Math.log(event.slip * event.slipLikelihood)
    const probability = setAside ? 1 : Math.min(1, Math.exp(logSlip + logSumOfSums(before, later) - total))
    slips.push({ id: event.id, probability })
    for (let s = 0; s < suspects; s++) later[s] += factor[s]
  }
  return slips.reverse()
}

const beforeChange = (later: Float64Array, { becomes, success }: Change): Float64Array<ArrayBuffer> => {
  const logSuccess = Math.log(success)
  const logFailure = Math.log1p(-success)
  return Float64Array.from(later, (value, s) => {
    const to = becomes[s]
    return to === s ? value : logAdd(later[to] + logSuccess, value + logFailure)
  })
}

const normalised = (weight: Float64Array, total: number): Float64Array => {
  const probability = weight.map((value) => Math.exp(value - total))
  const sum = probability.reduce((a, b) => a + b, 0)
  return probability.map((value) => value / sum)
}

const mostSurprising = (slips: Belief['slips']): string | null => {
  const most = slips.reduce<Belief['slips'][number] | null>(
    (best, slip) => (best === null || slip.probability > best.probability ? slip : best),
    null,
  )
  return most !== null && most.probability > unexplainedAbove ? most.id : null
}
