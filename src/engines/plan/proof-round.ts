import type { Kernel } from './kernel.ts'
import type { Situation } from './rules.ts'
import type { Goal, Target } from './targets.ts'

/**
 * One round of a proof as tables by suspect, for one set of steps that are still wanted. What fails a step but the last leaves
 * at once; what passes all leaves by the target's exit; what fails the last stays in play.
 */
export type ProofRound = {
  /** The steps made, in order. */
  readonly steps: readonly number[]
  /** By step made but the last, by suspect: P(the step is reached and fails). */
  readonly fails: readonly Float64Array[]
  readonly passes: Float64Array
  readonly stays: Float64Array
  /** By exit taken on failing, by suspect: expected payoff of those who leave. Made when first asked for. */
  readonly payoff: (Float64Array | undefined)[]
}

/**
 * Which steps of the proof are wanted now, as a set of bits: those that give a mark that is not held and that the exit, or a
 * later step that is wanted itself, asks for. 0 when the proof stands.
 */
export const wantedSteps = (goal: Goal, situation: Situation): number => {
  let wanted = 0
  for (let i = 0; i < goal.asks.length; i++) {
    const { step, place, byExit, bySteps } = goal.asks[i]
    if (situation[place] === 0 && (byExit || (bySteps & wanted) !== 0)) wanted |= 1 << step
  }
  return wanted
}

/** @param wanted a set of steps from `wantedSteps`, not empty */
export const proofRoundOf = (kernel: Kernel, target: Target, wanted: number): ProofRound => {
  const steps = [...target.steps.keys()].filter((k) => (wanted & (1 << k)) !== 0)
  let reached = new Float64Array(kernel.size).fill(1)
  const fails: Float64Array[] = []
  for (const k of steps) {
    const pass = target.pass[k]
    fails.push(reached.map((chance, s) => chance * (1 - pass[s])))
    reached = reached.map((chance, s) => chance * pass[s])
  }
  const stays = fails.pop() ?? reached
  return { steps, fails, passes: reached, stays, payoff: [] }
}

/** Expected payoff of those who leave in the round, by suspect, when failing an early step means `fallback`. */
export const roundPayoff = (kernel: Kernel, round: ProofRound, exit: number, fallback: number): Float64Array => {
  const known = round.payoff[fallback]
  if (known !== undefined) return known
  const sum = round.passes.map((chance, s) => chance * kernel.payoff[exit][s])
  for (const fail of round.fails) for (let s = 0; s < sum.length; s++) sum[s] += fail[s] * kernel.payoff[fallback][s]
  round.payoff[fallback] = sum
  return sum
}
