import type { Kernel } from './kernel.ts'
import { againOf, passOf, proofOf, type ProofStep } from './proof-chain.ts'
import type { Rules } from './rules.ts'

/** An exit that repairs may lead to, with the proof it asks for in the order it is made: what does not depend on suspects. */
export type Goal = {
  /** The exit, or -1 for whichever exit is best once the repairs are made, without a proof. */
  readonly exit: number
  readonly steps: readonly ProofStep[]
  /** The repairs that may lead towards it. */
  readonly repairs: Int32Array
  /** By place in `repairs`: the steps that the repair makes needed again, as bits. */
  readonly reproof: Int32Array
  readonly asks: readonly Ask[]
}

/** A mark that a step is made for, the last step's first, with who asks for it: the exit, or later steps as bits. */
type Ask = { readonly step: number; readonly place: number; readonly byExit: boolean; readonly bySteps: number }

/** A goal over the suspects of one kernel. */
export type Target = Goal & {
  /** P(pass) by step, by suspect. */
  readonly pass: readonly Float64Array[]
  /** P(fails in a way after which it can be made once more) by step, by suspect. */
  readonly again: readonly Float64Array[]
  /**
   * The suspects that the repair at place j changes, from `starts[j]` to `starts[j + 1]`, and how far it leads each
   * towards the exit, in money times its probability of success.
   */
  readonly starts: Int32Array
  readonly from: Int32Array
  readonly credit: Float64Array
  /** The same the other way round: the places in `repairs` of what changes a suspect, from `waysAt[s]` to `waysAt[s + 1]`. */
  readonly waysAt: Int32Array
  readonly ways: Int32Array
  readonly wayCredit: Float64Array
  /** By place in `repairs`: 1 over the least that a repair and the proof after it cost. */
  readonly perCost: Float64Array
  /** By suspect: at most what a run towards the goal can earn from it. */
  readonly most: Float64Array
}

/** What costs nothing counts as costing this much when gain is weighed against cost. */
export const leastCostMinor = 1e-9

/** Share of the gain that each repair short of the last one is credited with. */
const partCredit = 0.2

/** The exits worth repairing for, each with its proof. */
export const goalsOf = (rules: Rules, kernel: Kernel): readonly Goal[] => {
  const all = [...rules.repairs.keys()]
  const proved = rules.exits.flatMap((rule, exit) => {
    const steps = rule.needs.length === 0 ? null : proofOf(rules, kernel, rule.needs)
    return steps === null ? [] : [goalOf(rules, exit, steps, all)]
  })
  const paying = all.filter((repair) => maySelfPay(rules, kernel, repair))
  return paying.length === 0 ? proved : [goalOf(rules, -1, [], paying), ...proved]
}

const goalOf = (rules: Rules, exit: number, steps: readonly ProofStep[], repairs: readonly number[]): Goal => {
  const again = (repair: number, step: ProofStep): boolean =>
    step.wants.some((place) => rules.repairs[repair].takes.includes(place))
  const bits = (may: (step: ProofStep, k: number) => boolean): number =>
    steps.reduce((sum, step, k) => (may(step, k) ? sum | (1 << k) : sum), 0)
  const asks = steps.flatMap((step, k) =>
    [...step.wants].map((place): Ask => ({
      step: k,
      place,
      byExit: rules.exits[exit].needs.includes(place),
      bySteps: bits((later, at) => at > k && rules.checks[later.check].needs.includes(place)),
    })),
  )
  return {
    exit,
    steps,
    repairs: Int32Array.from(repairs),
    reproof: Int32Array.from(repairs, (repair) => bits((step) => again(repair, step))),
    asks: asks.reverse(),
  }
}

export const targetsOf = (rules: Rules, kernel: Kernel, goals: readonly Goal[]): readonly Target[] => {
  const most = mostOf(rules, kernel)
  return goals.map((goal) => {
    const pass = goal.steps.map((step) => passOf(kernel, step))
    const credits = creditsOf(rules, kernel, goal, worthTowards(rules, kernel, goal, pass))
    const again = goal.steps.map((step) => againOf(kernel, step))
    return { ...goal, pass, again, most, perCost: perCostOf(rules, goal), ...credits, ...waysOf(kernel, credits) }
  })
}

/** By suspect, how far along the way to the goal it is, in money. */
const worthTowards = (rules: Rules, kernel: Kernel, goal: Goal, pass: readonly Float64Array[]): Float64Array => {
  const needless = bestOf(kernel, (exit) => rules.exits[exit].needs.length === 0)
  if (goal.exit === -1) return needless
  const passes = (s: number): number => pass.reduce((chance, column) => chance * column[s], 1)
  return withoutDistance(
    kernel,
    kernel.payoff[goal.exit].map((payoff, s) => passes(s) * (payoff - needless[s])),
  )
}

/** Whether the repair may raise the payoff of an exit whose marks outlive it by more than it costs. */
const maySelfPay = (rules: Rules, kernel: Kernel, repair: number): boolean => {
  const { costMinor, minutes, success, takes } = rules.repairs[repair]
  const cost = costMinor + minutes * rules.minorPerMin
  const { from, to } = kernel.transitions[repair]
  return rules.exits.some(({ needs }, exit) => {
    if (needs.some((place) => takes.includes(place))) return false
    const payoff = kernel.payoff[exit]
    for (let i = 0; i < from.length; i++) if (success * (payoff[to[i]] - payoff[from[i]]) > cost) return true
    return false
  })
}

const bestOf = (kernel: Kernel, may: (exit: number) => boolean): Float64Array => {
  const best = new Float64Array(kernel.size).fill(-Infinity)
  kernel.payoff.forEach((column, exit) => {
    if (!may(exit)) return
    for (let s = 0; s < best.length; s++) best[s] = Math.max(best[s], column[s])
  })
  return best
}

type Credits = Pick<Target, 'starts' | 'from' | 'credit'>

const creditsOf = (rules: Rules, kernel: Kernel, goal: Goal, worth: Float64Array): Credits => {
  const starts = [0]
  const from: number[] = []
  const credit: number[] = []
  for (const repair of goal.repairs) {
    const transition = kernel.transitions[repair]
    transition.from.forEach((s, i) => {
      from.push(s)
      credit.push(rules.repairs[repair].success * (worth[transition.to[i]] - worth[s]))
    })
    starts.push(from.length)
  }
  return { starts: Int32Array.from(starts), from: Int32Array.from(from), credit: Float64Array.from(credit) }
}

/** Only the ways that lead towards the goal. */
const waysOf = (kernel: Kernel, credits: Credits): Pick<Target, 'waysAt' | 'ways' | 'wayCredit'> => {
  const bySuspect: { readonly place: number; readonly credit: number }[][] = Array.from(
    { length: kernel.size },
    () => [],
  )
  for (let place = 0; place + 1 < credits.starts.length; place++) {
    for (let i = credits.starts[place]; i < credits.starts[place + 1]; i++) {
      if (credits.credit[i] > 0) bySuspect[credits.from[i]].push({ place, credit: credits.credit[i] })
    }
  }
  const waysAt = new Int32Array(kernel.size + 1)
  bySuspect.forEach((list, s) => (waysAt[s + 1] = waysAt[s] + list.length))
  const all = bySuspect.flat()
  const wayCredit = Float64Array.from(all, ({ credit }) => credit)
  return { waysAt, ways: Int32Array.from(all, ({ place }) => place), wayCredit }
}

const perCostOf = (rules: Rules, goal: Goal): Float64Array =>
  Float64Array.from(goal.repairs, (repair, place) => {
    const checks = goal.steps
      .filter((_, k) => (goal.reproof[place] & (1 << k)) !== 0)
      .map((step) => rules.checks[step.check])
    const cost = [rules.repairs[repair], ...checks].reduce(
      (sum, { costMinor, minutes }) => sum + costMinor + minutes * rules.minorPerMin,
      0,
    )
    return 1 / Math.max(cost, leastCostMinor)
  })

/** Takes a share of the gain off for each repair that is still wanted before the last. */
const withoutDistance = (kernel: Kernel, worth: Float64Array): Float64Array => {
  const top = worth.reduce((best, value) => Math.max(best, value), 0)
  const distance = worth.map((value) => (value >= top / 2 && value > 0 ? 0 : Infinity))
  const oneMore = new Float64Array(kernel.transitions.length).fill(1)
  settle(kernel, distance, oneMore, (value, before) => value < before)
  const furthest = distance.reduce((far, value) => (value < Infinity ? Math.max(far, value) : far), 0)
  const short = (s: number): number => Math.max(0, Math.min(distance[s], furthest) - 1)
  return worth.map((value, s) => value - partCredit * top * short(s))
}

/** By suspect: the best exit whatever its marks, now or after repairs that work for sure, at their own cost. */
const mostOf = (rules: Rules, kernel: Kernel): Float64Array => {
  const most = bestOf(kernel, () => true)
  const cost = Float64Array.from(rules.repairs, ({ costMinor, minutes, success }) =>
    success === 0 ? -Infinity : -Math.max(0, costMinor + minutes * rules.minorPerMin),
  )
  settle(kernel, most, cost, (value, before) => value > before)
  return most
}

/** Carries values back along the repairs, each adding its own, until nothing changes. Repairs only take faults away, so it ends. */
const settle = (
  kernel: Kernel,
  values: Float64Array,
  added: Float64Array,
  better: (value: number, before: number) => boolean,
): void => {
  for (let changed = true; changed;) {
    changed = false
    for (let repair = 0; repair < kernel.transitions.length; repair++) {
      const { from, to } = kernel.transitions[repair]
      for (let i = 0; i < from.length; i++) {
        const value = values[to[i]] + added[repair]
        if (!better(value, values[from[i]])) continue
        values[from[i]] = value
        changed = true
      }
    }
  }
}
