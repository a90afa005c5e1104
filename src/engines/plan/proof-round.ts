import type { Kernel } from './kernel.ts'
import { timesLeft, type Rules, type Situation } from './rules.ts'
import type { Goal, Target } from './targets.ts'

/**
 * One round of a proof as tables by suspect, for one set of steps that are still wanted. What fails a step but the last leaves
 * at once; what passes all leaves by the target's exit; what fails the last stays in play.
 */
export type ProofRound = {
  /** The steps made, in order. */
  readonly steps: readonly number[]
  /** By step made: whether it is made once more when it fails. */
  readonly again: readonly boolean[]
  /** By suspect: expected cost of what is made once more. */
  readonly againMinor: Float64Array
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

/** Which of the steps can be made once more if they fail, as a set of bits. */
export const repeatableSteps = (rules: Rules, goal: Goal, situation: Situation): number => {
  let again = 0
  for (let k = 0; k < goal.steps.length; k++) {
    const { check, again: may } = goal.steps[k]
    if (may.includes(true) && timesLeft(rules, situation, check) > 1) again |= 1 << k
  }
  return again
}

/**
 * @param wanted a set of steps from `wantedSteps`, not empty
 * @param repeatable a set of steps from `repeatableSteps`
 */
export const proofRoundOf = (
  rules: Rules,
  kernel: Kernel,
  target: Target,
  wanted: number,
  repeatable: number,
): ProofRound => {
  const steps = [...target.steps.keys()].filter((k) => (wanted & (1 << k)) !== 0)
  let reached = new Float64Array(kernel.size).fill(1)
  const fails: Float64Array[] = []
  const again = steps.map((k) => (repeatable & (1 << k)) !== 0)
  const againMinor = new Float64Array(kernel.size)
  for (const k of steps) {
    const once = target.pass[k]
    const repeats = (repeatable & (1 << k)) !== 0
    const { costMinor, minutes } = rules.checks[target.steps[k].check]
    const cost = costMinor + minutes * rules.minorPerMin
    const failing = target.again[k]
    if (repeats) reached.forEach((chance, s) => (againMinor[s] += chance * failing[s] * cost))
    const pass = repeats ? once.map((chance, s) => chance * (1 + failing[s])) : once
    fails.push(reached.map((chance, s) => chance * (1 - pass[s])))
    reached = reached.map((chance, s) => chance * pass[s])
  }
  const stays = fails.pop() ?? reached
  return { steps, again, againMinor, fails, passes: reached, stays, payoff: [] }
}

/** Expected payoff of those who leave in the round, less what is made once more, by suspect, when failing an early step means `fallback`. */
export const roundPayoff = (kernel: Kernel, round: ProofRound, exit: number, fallback: number): Float64Array => {
  const known = round.payoff[fallback]
  if (known !== undefined) return known
  const sum = round.passes.map((chance, s) => chance * kernel.payoff[exit][s] - round.againMinor[s])
  for (const fail of round.fails) for (let s = 0; s < sum.length; s++) sum[s] += fail[s] * kernel.payoff[fallback][s]
  round.payoff[fallback] = sum
  return sum
}
