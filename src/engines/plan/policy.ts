import type { Kernel } from './kernel.ts'
import { takeStep, type Step } from './step.ts'
import { applyOutcome, checkIsOpen, closingMin, holds, repairIsOpen, type Rules, type Situation } from './rules.ts'

/**
 * What to do at a point, and for each outcome what follows; null after an outcome that cannot come up. Points that are come to
 * on several ways may be one object, so a policy is a graph without circles.
 */
export type Policy =
  | { readonly kind: 'exit'; readonly exit: number }
  | { readonly kind: 'step'; readonly step: Step; readonly next: readonly (Policy | null)[] }

const exits: Policy[] = []

/** Leaving by an exit; always the same object, so that what follows it is worked out once. */
export const exitPolicy = (exit: number): Policy => (exits[exit] ??= { kind: 'exit', exit })

/** By suspect, under a policy: expected money, expected square of the money, and expected own minutes. */
export type Outlook = { readonly money: Float64Array; readonly square: Float64Array; readonly minutes: Float64Array }

/**
 * What a policy brings by suspect, from a situation, covers and own time paid for. The mean over a belief is what it brings at
 * that belief, since a policy sees outcomes and not the suspect. Exact; the square counts the chance of breaking something.
 */
export const outlookOf = (rules: Rules, kernel: Kernel, policy: Policy, from: Situation): Outlook => {
  const columns = columnsByPoint(kernel)
  return backwards(rules, policy, from, {
    leave: (exit, situation) => leaving(rules, kernel, exit, situation),
    repair: (repair, spent, then) => {
      const { breakVariance } = rules.repairs[repair]
      return spending(mended(rules, kernel, repair, then), spent, breakVariance)
    },
    check: (check, spent, next, then) => {
      const mean = emptyOutlook(kernel.size)
      for (const [point, outlook] of then) addWeighted(mean, outlook, columns(check, next, point))
      return spending(mean, spent, 0)
    },
  })
}

/** The money alone, by suspect: the same as `outlookOf` gives, for less work. */
export const moneyBySuspect = (rules: Rules, kernel: Kernel, policy: Policy, from: Situation): Float64Array =>
  moneyFinder(rules, kernel)(policy, from)

/** The money by suspect from any point of a policy on; what was worked out once is kept for the points that are asked for later. */
export const moneyFinder = (rules: Rules, kernel: Kernel): ((policy: Policy, from: Situation) => Float64Array) => {
  const columns = columnsByPoint(kernel)
  const figuring: Figuring<Float64Array> = {
    leave: (exit, situation) => leavingMoney(rules, kernel, exit, situation),
    repair: (repair, { costMinor }, then) => {
      const money = beforeRepair(rules, kernel, repair, then)
      for (let s = 0; s < money.length; s++) money[s] -= costMinor
      return money
    },
    check: (check, { costMinor }, next, then) => {
      const money = new Float64Array(kernel.size).fill(-costMinor)
      for (const [point, after] of then) addProducts(money, columns(check, next, point), after)
      return money
    },
  }
  const known: Known<Float64Array> = new Map()
  return (policy, from) => backwards(rules, policy, from, figuring, known)
}

const addProducts = (sum: Float64Array, a: Float64Array, b: Float64Array): void => {
  for (let s = 0; s < sum.length; s++) sum[s] += a[s] * b[s]
}

type Spent = { readonly costMinor: number; readonly minutes: number }

/** How a figure is worked out at each kind of point from the figures of what follows. */
type Figuring<Figure> = {
  readonly leave: (exit: number, situation: Situation) => Figure
  readonly repair: (repair: number, spent: Spent, then: Figure) => Figure
  readonly check: (
    check: number,
    spent: Spent,
    next: readonly (Policy | null)[],
    then: readonly (readonly [Policy, Figure])[],
  ) => Figure
}

/** Figures that were worked out: by point, by the covers that are off there. */
type Known<Figure> = Map<Policy, Map<number, Figure>>

/** Works a figure out from the exits backwards, each point once for each set of covers that it is come to with. */
const backwards = <Figure>(
  rules: Rules,
  policy: Policy,
  from: Situation,
  figuring: Figuring<Figure>,
  known: Known<Figure> = new Map(),
): Figure => {
  const at = (point: Policy, situation: Situation): Figure => {
    const bySituation = known.get(point) ?? new Map<number, Figure>()
    known.set(point, bySituation)
    const key = coversOf(rules, situation)
    const figure =
      bySituation.get(key) ??
      (point.kind === 'exit' ? figuring.leave(point.exit, situation) : stepping(point, situation))
    bySituation.set(key, figure)
    return figure
  }
  const stepping = ({ step, next }: Policy & { kind: 'step' }, situation: Situation): Figure => {
    const moved = situation.slice()
    const minutes = takeStep(rules, moved, step)
    const rule = step.kind === 'check' ? rules.checks[step.index] : rules.repairs[step.index]
    const spent = { costMinor: rule.costMinor + minutes * rules.minorPerMin, minutes }
    if (step.kind === 'repair') return figuring.repair(step.index, spent, at(next[0]!, moved))
    const then: (readonly [Policy, Figure])[] = []
    for (let o = 0; o < next.length; o++) {
      const point = next[o]
      if (point !== null && next.indexOf(point) === o) then.push([point, at(point, moved)])
    }
    return figuring.check(step.index, spent, next, then)
  }
  return at(policy, from)
}

/** P(any of the outcomes that lead to a point), by suspect; sums once made are kept, as the same ones come up again and again. */
const columnsByPoint = (kernel: Kernel) => {
  const known = kernel.likelihood.map(() => new Map<number, Float64Array>())
  return (check: number, next: readonly (Policy | null)[], point: Policy): Float64Array => {
    let outcomes = 0
    for (let o = 0; o < next.length; o++) if (next[o] === point) outcomes += 2 ** o
    const before = known[check].get(outcomes)
    if (before !== undefined) return before
    const sum = new Float64Array(kernel.size)
    kernel.likelihood[check].forEach((column, o) => {
      if (next[o] === point) for (let s = 0; s < sum.length; s++) sum[s] += column[s]
    })
    known[check].set(outcomes, sum)
    return sum
  }
}

/** Of what has been made, only the covers that are off bear on what following a given policy costs. */
const coversOf = (rules: Rules, situation: Situation): number => {
  let covers = 0
  for (let cover = 0; cover < rules.coverCount; cover++) covers = covers * 2 + situation[cover]
  return covers
}

const leavingMoney = (rules: Rules, kernel: Kernel, exit: number, situation: Situation): Float64Array => {
  const closing = rules.exits[exit].allCoversOn ? rules.minorPerMin * closingMin(rules, situation) : 0
  return kernel.payoff[exit].map((payoff) => payoff - closing)
}

/** What follows a repair, by the suspect before it. */
const beforeRepair = ({ repairs }: Rules, kernel: Kernel, repair: number, after: Float64Array): Float64Array => {
  const { from, to } = kernel.transitions[repair]
  const { success } = repairs[repair]
  const mean = after.slice()
  for (let i = 0; i < from.length; i++) mean[from[i]] = success * after[to[i]] + (1 - success) * after[from[i]]
  return mean
}

const leaving = (rules: Rules, kernel: Kernel, exit: number, situation: Situation): Outlook => {
  const closing = rules.exits[exit].allCoversOn ? closingMin(rules, situation) : 0
  const money = leavingMoney(rules, kernel, exit, situation)
  return { money, square: money.map((x) => x * x), minutes: new Float64Array(kernel.size).fill(closing) }
}

const emptyOutlook = (size: number): Outlook => ({
  money: new Float64Array(size),
  square: new Float64Array(size),
  minutes: new Float64Array(size),
})

const addWeighted = (sum: Outlook, part: Outlook, weight: Float64Array): void => {
  for (let s = 0; s < weight.length; s++) {
    sum.money[s] += weight[s] * part.money[s]
    sum.square[s] += weight[s] * part.square[s]
    sum.minutes[s] += weight[s] * part.minutes[s]
  }
}

/** What follows a repair, by the suspect before it. */
const mended = (rules: Rules, kernel: Kernel, repair: number, then: Outlook): Outlook => ({
  money: beforeRepair(rules, kernel, repair, then.money),
  square: beforeRepair(rules, kernel, repair, then.square),
  minutes: beforeRepair(rules, kernel, repair, then.minutes),
})

/** Takes what is spent off an outlook, in place. */
const spending = (then: Outlook, { costMinor, minutes }: Spent, variance: number): Outlook => {
  for (let s = 0; s < then.money.length; s++) {
    then.square[s] += costMinor * (costMinor - 2 * then.money[s]) + variance
    then.money[s] -= costMinor
    then.minutes[s] += minutes
  }
  return then
}

/** Whether every move of a policy can be made where it is come to, its marks held and the check or repair not used up. */
export const canFollow = (rules: Rules, policy: Policy, from: Situation): boolean => {
  const known = new Map<Policy, Map<string, boolean>>()
  const can = (point: Policy, situation: Situation): boolean => {
    const bySituation = known.get(point) ?? new Map<string, boolean>()
    known.set(point, bySituation)
    const key = String.fromCharCode(...situation)
    const before = bySituation.get(key)
    if (before !== undefined) return before
    const now = isOpenAt(rules, point, situation) && follows(rules, point, situation, can)
    bySituation.set(key, now)
    return now
  }
  return can(policy, from)
}

const isOpenAt = (rules: Rules, point: Policy, situation: Situation): boolean => {
  if (point.kind === 'exit') return holds(situation, rules.exits[point.exit].needs)
  const { kind, index } = point.step
  return kind === 'check' ? checkIsOpen(rules, situation, index) : repairIsOpen(rules, situation, index)
}

const follows = (
  rules: Rules,
  point: Policy,
  situation: Situation,
  can: (point: Policy, situation: Situation) => boolean,
): boolean => {
  if (point.kind === 'exit') return true
  const moved = situation.slice()
  takeStep(rules, moved, point.step)
  return point.next.every((next, outcome) => {
    const after = moved.slice()
    if (point.step.kind === 'check') applyOutcome(rules, after, point.step.index, outcome)
    return next === null || can(next, after)
  })
}
