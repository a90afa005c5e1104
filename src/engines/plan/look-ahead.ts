import { basePolicy, baseValue, followBase } from './base-policy.ts'
import { baseWorkOf, type BaseWork } from './base-work.ts'
import { dot, multiply } from './dot.ts'
import type { Kernel } from './kernel.ts'
import type { Policy } from './policy.ts'
import { applyOutcome, checkIsOpen, makeCheck, type Rules, type Situation } from './rules.ts'
import { takeStep, type Step } from './step.ts'
import { goalsOf, targetsOf, type Goal } from './targets.ts'

/** One kernel with its work arrays: the beliefs after the moves looked ahead, by depth. */
type Side = { readonly base: BaseWork; readonly beliefs: readonly Float64Array[] }

/**
 * Work arrays for looking ahead. Policies are chosen on the near side, a kernel of the likeliest suspects, and what they are
 * worth is worked out on the whole side, so that every figure is exact for the policy it belongs to.
 */
export type LookAhead = {
  readonly rules: Rules
  readonly goals: readonly Goal[]
  readonly near: Side
  readonly whole: Side
  readonly levels: readonly Level[]
  /** Of the near side, by check: the sum of p·ln p over its outcomes, by suspect. */
  readonly terms: readonly Float64Array[]
}

type Level = { readonly moved: Situation; readonly situation: Situation }

const depth = 2

export const lookAheadOf = (rules: Rules, whole: Kernel, near: Kernel): LookAhead => {
  const goals = goalsOf(rules, whole)
  const side = (kernel: Kernel): Side => ({
    base: baseWorkOf(rules, kernel, targetsOf(rules, kernel, goals)),
    beliefs: Array.from({ length: depth }, () => new Float64Array(kernel.size)),
  })
  return {
    rules,
    goals,
    near: side(near),
    whole: side(whole),
    levels: Array.from({ length: depth }, () => ({
      moved: new Uint8Array(rules.start.length),
      situation: new Uint8Array(rules.start.length),
    })),
    terms: near.likelihood.map((columns) => surpriseTerms(columns, near.size)),
  }
}

/** What to work out: the value on the near side, to choose by, or the value on the whole side. */
export type Figures = 'near' | 'whole'

const outcomesOf = (rules: Rules, step: Step): number =>
  step.kind === 'repair' ? 1 : rules.checks[step.index].gives.length

/** The base policy's value at the start. */
export const valueAtStart = (ahead: LookAhead): number => afterwards(ahead, -1, -1, 'whole')

/**
 * The value, a sum over the belief, when the step is made next and, after each outcome, the better of the base policy and the check
 * named for that outcome (then the base policy). Exact for that policy on the side asked for.
 * @param at depth: 0 from the start, 1 from the outcome that depth 0 holds
 * @param follow by outcome, the check to weigh against the base policy; -1 for none. Null for none at all.
 */
export const valueOfStep = (
  ahead: LookAhead,
  at: number,
  step: Step,
  follow: Int32Array | null,
  figures: Figures,
): number => {
  const { rules } = ahead
  const { moved } = ahead.levels[at]
  moved.set(situationAt(ahead, at - 1))
  const minutes = takeStep(rules, moved, step)
  const cost = costOf(rules, step) + minutes * rules.minorPerMin
  let value = 0
  for (let outcome = 0; outcome < outcomesOf(rules, step); outcome++) {
    const mass = branch(ahead, at, step, outcome, figures)
    if (mass <= 0) continue
    value += afterwards(ahead, at, follow === null ? -1 : follow[outcome], figures) - cost * mass
  }
  return value
}

const situationAt = (ahead: LookAhead, at: number): Situation =>
  at === -1 ? ahead.rules.start : ahead.levels[at].situation

const beliefAt = (side: Side, at: number): Float64Array => (at === -1 ? side.base.kernel.belief : side.beliefs[at])

/** The better of the base policy and one more check, at the belief and situation of a depth. */
const afterwards = (ahead: LookAhead, at: number, check: number, figures: Figures): number => {
  const checked = check === -1 ? -Infinity : valueOfStep(ahead, at + 1, { kind: 'check', index: check }, null, figures)
  const based = baseAt(ahead, at, figures)
  return Math.max(checked, based)
}

const baseAt = (ahead: LookAhead, at: number, figures: Figures): number => {
  const { near, whole } = ahead
  const situation = situationAt(ahead, at)
  const likely = beliefAt(near, at)
  const chosen = baseValue(near.base, likely, sumOf(likely), situation)
  if (figures === 'near') return chosen
  const belief = beliefAt(whole, at)
  return followBase(whole.base, near.base, belief, sumOf(belief), situation)
}

const sumOf = (belief: Float64Array): number => {
  let sum = 0
  for (let s = 0; s < belief.length; s++) sum += belief[s]
  return sum
}

/** The policy whose value `valueOfStep` gives on the whole side. */
export const policyOfStep = (ahead: LookAhead, at: number, step: Step, follow: Int32Array | null): Policy => {
  const { rules } = ahead
  const { moved } = ahead.levels[at]
  moved.set(situationAt(ahead, at - 1))
  takeStep(rules, moved, step)
  const next: (Policy | null)[] = []
  for (let outcome = 0; outcome < outcomesOf(rules, step); outcome++) {
    const mass = branch(ahead, at, step, outcome, 'whole')
    next.push(mass <= 0 ? null : policyAfterwards(ahead, at, follow === null ? -1 : follow[outcome]))
  }
  return { kind: 'step', step, next }
}

const policyAfterwards = (ahead: LookAhead, at: number, check: number): Policy => {
  const based = baseAt(ahead, at, 'whole')
  const step: Step = { kind: 'check', index: check }
  if (check !== -1 && valueOfStep(ahead, at + 1, step, null, 'whole') > based)
    return policyOfStep(ahead, at + 1, step, null)
  const belief = beliefAt(ahead.whole, at)
  baseAt(ahead, at, 'near')
  return basePolicy(ahead.whole.base, ahead.near.base, belief, sumOf(belief), situationAt(ahead, at))
}

const costOf = (rules: Rules, step: Step): number =>
  step.kind === 'check' ? rules.checks[step.index].costMinor : rules.repairs[step.index].costMinor

/** Puts the beliefs and the situation after one outcome into the depth; gives back the mass of the outcome. */
const branch = (ahead: LookAhead, at: number, step: Step, outcome: number, figures: Figures): number => {
  const { moved, situation } = ahead.levels[at]
  situation.set(moved)
  if (step.kind === 'check') applyOutcome(ahead.rules, situation, step.index, outcome)
  const likely = learn(ahead.near, at, step, outcome)
  return figures === 'near' ? likely : learn(ahead.whole, at, step, outcome)
}

const learn = (side: Side, at: number, step: Step, outcome: number): number => {
  const { kernel, rules } = side.base
  const before = beliefAt(side, at - 1)
  const after = side.beliefs[at]
  if (step.kind === 'check') return multiply(after, before, kernel.likelihood[step.index][outcome])
  const { from, to } = kernel.transitions[step.index]
  const { success } = rules.repairs[step.index]
  after.set(before)
  for (let i = 0; i < from.length; i++) {
    const mended = success * before[from[i]]
    after[to[i]] += mended
    after[from[i]] -= mended
  }
  return sumOf(after)
}

/** Most checks weighed after an outcome. */
const candidateCount = 10

/**
 * For each outcome of a step, the check that is best made next, or -1 where the base policy is as good.
 * Looks at the checks that tell most per cost at that point. Stops weighing when `limit` base values have been worked out.
 */
export const bestFollowUps = (ahead: LookAhead, step: Step, limit: number): Int32Array => {
  const { rules, near, levels } = ahead
  const follow = new Int32Array(outcomesOf(rules, step)).fill(-1)
  levels[0].moved.set(rules.start)
  takeStep(rules, levels[0].moved, step)
  for (let outcome = 0; outcome < follow.length; outcome++) {
    const mass = branch(ahead, 0, step, outcome, 'near')
    if (mass <= 0) continue
    let best = baseAt(ahead, 0, 'near')
    for (const check of mostTelling(ahead, mass)) {
      if (near.base.steps >= limit) break
      const value = valueOfStep(ahead, 1, { kind: 'check', index: check }, null, 'near')
      if (value <= best) continue
      best = value
      follow[outcome] = check
    }
  }
  return follow
}

/** The checks that can be made after the outcome at depth 0, those with most information per cost first. */
const mostTelling = (ahead: LookAhead, mass: number): readonly number[] => {
  const { rules, levels } = ahead
  const { situation } = levels[0]
  const scored: { readonly check: number; readonly score: number }[] = []
  for (let check = 0; check < rules.checks.length; check++) {
    if (!checkIsOpen(rules, situation, check)) continue
    const told = informationOf(ahead, mass, check)
    if (told <= leastInformation * mass) continue
    levels[1].moved.set(situation)
    const minutes = makeCheck(rules, levels[1].moved, check)
    const cost = rules.checks[check].costMinor + minutes * rules.minorPerMin
    scored.push({ check, score: told / Math.max(cost, leastCostMinor) })
  }
  scored.sort((a, b) => b.score - a.score || a.check - b.check)
  return scored.slice(0, candidateCount).map(({ check }) => check)
}

const leastInformation = 1e-12
const leastCostMinor = 1e-9

/** Mutual information between suspect and outcome, in nats, times the mass of the belief at depth 0 of the near side. */
const informationOf = (ahead: LookAhead, mass: number, check: number): number => {
  const belief = ahead.near.beliefs[0]
  let told = dot(belief, ahead.terms[check])
  for (const column of ahead.near.base.kernel.likelihood[check]) {
    const chance = dot(belief, column)
    if (chance > 0) told -= chance * Math.log(chance / mass)
  }
  return told
}

/** By suspect, the sum of p·ln p over the outcomes. */
export const surpriseTerms = (columns: readonly Float64Array[], size: number): Float64Array => {
  const terms = new Float64Array(size)
  for (const column of columns) {
    for (let s = 0; s < size; s++) if (column[s] > 0) terms[s] += column[s] * Math.log(column[s])
  }
  return terms
}
