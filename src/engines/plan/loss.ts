import { multiply } from './dot.ts'
import type { Kernel } from './kernel.ts'
import { takeStep } from './step.ts'
import type { Policy } from './policy.ts'
import { closingMin, type Rules, type Situation } from './rules.ts'

/** Paths less likely than this are not followed to their end but counted as losing. */
const leastMass = 1e-7

/**
 * The probability that the money from here on, under a policy, is below a sum. Exact but for paths less likely than one in ten
 * million, which count as below it. Breaking something is an event here, not its mean.
 */
export const chanceBelow = (rules: Rules, kernel: Kernel, policy: Policy, belowMinor: number): number => {
  const follow = (point: Policy, belief: Float64Array, situation: Situation, spentMinor: number): number => {
    const mass = belief.reduce((sum, p) => sum + p, 0)
    if (mass < leastMass) return mass
    if (point.kind === 'exit')
      return leavingBelow(rules, kernel, point.exit, belief, situation, spentMinor + belowMinor)
    const moved = situation.slice()
    const { step, next } = point
    const spent = spentMinor + takeStep(rules, moved, step) * rules.minorPerMin
    if (step.kind === 'check') {
      const cost = spent + rules.checks[step.index].costMinor
      return branches(kernel, step.index, next, belief).reduce(
        (sum, [then, after]) => sum + follow(then, after, moved, cost),
        0,
      )
    }
    const { breakRisk, breakCostMinor, partsMinor } = rules.repairs[step.index]
    const after = repaired(rules, kernel, step.index, belief)
    const [then] = next
    const whole = breakRisk < 1 ? follow(then!, scaled(after, 1 - breakRisk), moved, spent + partsMinor) : 0
    const broken =
      breakRisk > 0 ? follow(then!, scaled(after, breakRisk), moved, spent + partsMinor + breakCostMinor) : 0
    return whole + broken
  }
  return Math.min(1, follow(policy, kernel.belief, rules.start, 0))
}

const leavingBelow = (
  rules: Rules,
  kernel: Kernel,
  exit: number,
  belief: Float64Array,
  situation: Situation,
  wantedMinor: number,
): number => {
  const closing = rules.exits[exit].allCoversOn ? closingMin(rules, situation) * rules.minorPerMin : 0
  const payoff = kernel.payoff[exit]
  return belief.reduce((sum, p, s) => (payoff[s] - closing < wantedMinor ? sum + p : sum), 0)
}

/** What may follow a check, each with its share of the belief; outcomes that lead to the same point are one. */
const branches = (
  kernel: Kernel,
  check: number,
  next: readonly (Policy | null)[],
  belief: Float64Array,
): readonly (readonly [Policy, Float64Array])[] => {
  const shares = new Map<Policy, Float64Array>()
  const share = new Float64Array(belief.length)
  next.forEach((point, outcome) => {
    if (point === null || multiply(share, belief, kernel.likelihood[check][outcome]) <= 0) return
    const sum = shares.get(point)
    if (sum === undefined) shares.set(point, share.slice())
    else for (let s = 0; s < sum.length; s++) sum[s] += share[s]
  })
  return [...shares]
}

const repaired = (rules: Rules, kernel: Kernel, repair: number, belief: Float64Array): Float64Array => {
  const { from, to } = kernel.transitions[repair]
  const after = belief.slice()
  for (let i = 0; i < from.length; i++) {
    const mended = rules.repairs[repair].success * belief[from[i]]
    after[to[i]] += mended
    after[from[i]] -= mended
  }
  return after
}

const scaled = (belief: Float64Array, by: number): Float64Array => belief.map((p) => p * by)
