import { dot } from './dot.ts'
import { suspectsAfterRepair } from './fault-sets.ts'
import type { Kernel } from './kernel.ts'
import { moneyFinder, type Policy } from './policy.ts'
import { policyIn } from './policy-graph.ts'
import { closingMin, rulesOf, type Rules, type Situation } from './rules.ts'
import type { PlanProblem, PolicyPoint } from './schema.ts'
import { takeStep } from './step.ts'

/**
 * One way a job ends under a policy. `chance`: by suspect, in the order of the problem, the probability of ending this way as
 * that suspect. `spentMinor`: parts, breakages and own time up to there, closing covers included; the exit's payoff is not in it.
 */
export type PolicyEnding = {
  readonly exit: number
  readonly chance: Float64Array
  readonly spentMinor: number
  readonly minutes: number
  /** What of it was paid for parts and materials of repairs. */
  readonly partsMinor: number
}

/** Ways too unlikely to be followed to their end, where they were left: how likely, and the expected money of them in all. */
export type PolicyLeftOut = { readonly probability: number; readonly moneyMinor: number }

export type PolicyEndings = {
  readonly endings: readonly PolicyEnding[]
  readonly leftOut: readonly PolicyLeftOut[]
  /** Expected money of following the policy, by suspect in the order of the problem. */
  readonly moneyMinor: Float64Array
}

/** Ways less likely than this are not followed to their end; about one job in fifty ends in one of them. */
const leastChance = 1e-5

/**
 * Every way a job may end when a policy is followed: each outcome of a check, each repair that works or not, breaking something
 * as an event of its own. What is left out is known by its mean, so the mean of all is exact. Throws where the policy is not one
 * of this problem, which is a programmer's mistake.
 */
export const endingsUnder = (
  problem: PlanProblem,
  graph: readonly PolicyPoint[],
  least: number = leastChance,
): PolicyEndings => {
  const policy = policyIn(problem, graph, true)
  if (policy === null) throw new Error('the policy does not belong to this problem')
  const rules = rulesOf(problem)
  const kernel = plainKernel(problem)
  const money = moneyFinder(rules, kernel)
  const moneyMinor = money(policy, rules.start)
  const walk: Walk = { rules, kernel, least, money, groups: new Map(), endings: [], leftOut: [] }
  follow(walk, policy, { belief: kernel.belief, situation: rules.start, spentMinor: 0, minutes: 0, partsMinor: 0 })
  return { endings: walk.endings, leftOut: walk.leftOut, moneyMinor }
}

/** The suspects as they stand in the problem, none merged and none left out. */
const plainKernel = (problem: PlanProblem): Kernel => {
  const { suspects, checks, exits } = problem
  const { after } = suspectsAfterRepair(problem)
  const total = suspects.reduce((sum, { probability }) => sum + probability, 0)
  return {
    size: suspects.length,
    belief: Float64Array.from(suspects, ({ probability }) => probability / total),
    payoff: exits.map(({ payoffMinor }) => Float64Array.from(payoffMinor)),
    likelihood: checks.map(({ outcomes, likelihood }) => {
      const sums = likelihood.map((row) => row.reduce((sum, p) => sum + p, 0))
      return outcomes.map((_, o) => Float64Array.from(likelihood, (row, s) => row[o] / sums[s]))
    }),
    transitions: after.map((row) => {
      const from = [...row.keys()].filter((s) => row[s] !== s)
      return { from: Int32Array.from(from), to: Int32Array.from(from, (s) => row[s]) }
    }),
  }
}

type Walk = {
  readonly rules: Rules
  readonly kernel: Kernel
  readonly least: number
  readonly money: ReturnType<typeof moneyFinder>
  /** For a point that is a check: what may follow, each with the probability by suspect of coming to it. */
  readonly groups: Map<Policy, readonly Follower[]>
  readonly endings: PolicyEnding[]
  readonly leftOut: PolicyLeftOut[]
}
type Follower = { readonly point: Policy; readonly chance: Float64Array }

type Place = {
  readonly belief: Float64Array
  readonly situation: Situation
  readonly spentMinor: number
  readonly minutes: number
  readonly partsMinor: number
}

const follow = (walk: Walk, point: Policy, at: Place): void => {
  const { rules } = walk
  let mass = 0
  for (let s = 0; s < at.belief.length; s++) mass += at.belief[s]
  if (mass < walk.least) {
    leaveOut(walk, point, at, mass)
    return
  }
  if (point.kind === 'exit') return leave(walk, point.exit, at)
  const situation = at.situation.slice()
  const minutes = takeStep(rules, situation, point.step)
  const moved = {
    ...at,
    situation,
    minutes: at.minutes + minutes,
    spentMinor: at.spentMinor + minutes * rules.minorPerMin,
  }
  if (point.step.kind === 'repair') return mend(walk, point.step.index, point.next[0]!, moved)
  const { costMinor } = rules.checks[point.step.index]
  for (const { point: then, chance } of followersOf(walk, point)) {
    const belief = moved.belief.slice()
    for (let s = 0; s < belief.length; s++) belief[s] *= chance[s]
    follow(walk, then, { ...moved, belief, spentMinor: moved.spentMinor + costMinor })
  }
}

const leaveOut = (walk: Walk, point: Policy, { belief, situation, spentMinor }: Place, mass: number): void => {
  if (mass > 0)
    walk.leftOut.push({ probability: mass, moneyMinor: dot(belief, walk.money(point, situation)) / mass - spentMinor })
}

const leave = (walk: Walk, exit: number, { belief, situation, spentMinor, minutes, partsMinor }: Place): void => {
  const { rules, endings } = walk
  const closing = rules.exits[exit].allCoversOn ? closingMin(rules, situation) : 0
  endings.push({
    exit,
    chance: belief,
    spentMinor: spentMinor + closing * rules.minorPerMin,
    minutes: minutes + closing,
    partsMinor,
  })
}

const mend = (walk: Walk, repair: number, then: Policy, at: Place): void => {
  const { success, breakRisk, breakCostMinor, partsMinor } = walk.rules.repairs[repair]
  const { from, to } = walk.kernel.transitions[repair]
  const belief = at.belief.slice()
  for (let i = 0; i < from.length; i++) {
    const mended = success * at.belief[from[i]]
    belief[to[i]] += mended
    belief[from[i]] -= mended
  }
  for (const [chance, brokenMinor] of [
    [1 - breakRisk, 0],
    [breakRisk, breakCostMinor],
  ] as const) {
    if (chance === 0) continue
    follow(walk, then, {
      ...at,
      belief: chance === 1 ? belief : belief.map((p) => p * chance),
      spentMinor: at.spentMinor + partsMinor + brokenMinor,
      partsMinor: at.partsMinor + partsMinor,
    })
  }
}

const followersOf = (walk: Walk, point: Policy & { kind: 'step' }): readonly Follower[] => {
  const known = walk.groups.get(point)
  if (known !== undefined) return known
  const columns = walk.kernel.likelihood[point.step.index]
  const sums = new Map<Policy, Float64Array>()
  point.next.forEach((then, outcome) => {
    if (then === null) return
    const sum = sums.get(then) ?? new Float64Array(walk.kernel.size)
    sums.set(then, sum)
    for (let s = 0; s < sum.length; s++) sum[s] += columns[outcome][s]
  })
  const followers = [...sums].map(([then, chance]) => ({ point: then, chance }))
  walk.groups.set(point, followers)
  return followers
}
