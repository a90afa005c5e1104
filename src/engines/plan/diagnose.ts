import { baseValue, chosenPolicy } from './base-policy.ts'
import type { BaseChoice, BaseWork } from './base-work.ts'
import { dot, multiply } from './dot.ts'
import { surpriseTerms } from './look-ahead.ts'
import { takeStep, type Step } from './step.ts'
import { mendOf } from './mends.ts'
import { exitPolicy, type Policy } from './policy.ts'
import {
  applyOutcome,
  checkIsOpen,
  closingMin,
  holds,
  makeCheck,
  repairIsOpen,
  timesLeft,
  type Rules,
  type Situation,
} from './rules.ts'

/** How deep the search for the fault goes, and the share of the belief below which a branch is left to the base policy. */
const deepest = 30
const leastMass = 0.0005
/** What is left of the whole belief below which no more repairs are followed one by one. */
const negligibleMass = 1e-5
/** Situations below which a branch is left to the base policy. */
const leastAllowed = 2
/** Probability from which on a repair is made rather than looked for further. */
const mendAt = 0.75
/** Information below this share of what is left is not worth following. In nats. */
const leastTold = 0.002
const leastCostMinor = 1e-6
/** Suspects below this share of what is left are not weighed when a check is chosen. */
const leastShare = 1e-4
/** Checks, the most telling ones per cost, that are weighed by what they tell about what to mend. */
const weighedChecks = 16
/** What two figures of information may differ by from rounding alone, as a share; far more than they do. */
const roundingShare = 1e-6

type Level = {
  readonly belief: Float64Array
  /** The suspects that still count, by their places: the first `aliveCount` entries. */
  readonly alive: Int32Array
  aliveCount: number
  readonly situation: Situation
  readonly moved: Situation
  /** The base policy here, kept while the levels below use the work arrays. */
  chosen: BaseChoice
  readonly order: Int32Array
  tried: number
  policy: Policy | null
  triedPolicy: Policy | null
}

/** Work arrays of a search for the fault, on the suspects of one kernel. */
export type Diagnosis = {
  readonly rules: Rules
  readonly base: BaseWork
  readonly levels: readonly Level[]
  /** By check: the sum of p·ln p over its outcomes, by suspect. */
  readonly terms: readonly Float64Array[]
  /** By mark, by its place in the situation: the checks that can give it. */
  readonly givers: ReadonlyMap<number, readonly number[]>
  /** By suspect, what to do about it. */
  readonly mends: Int32Array
  readonly sums: Float64Array
  readonly totals: Float64Array
}

export const diagnosisOf = (rules: Rules, base: BaseWork): Diagnosis => {
  const { size } = base.kernel
  const mends = mendOf(rules, base.kernel)
  return {
    rules,
    base,
    levels: Array.from({ length: deepest + 1 }, () => ({
      belief: new Float64Array(size),
      alive: new Int32Array(size),
      aliveCount: 0,
      situation: new Uint8Array(rules.start.length),
      moved: new Uint8Array(rules.start.length),
      chosen: base.choice,
      order: new Int32Array(rules.repairs.length),
      tried: 0,
      policy: null,
      triedPolicy: null,
    })),
    terms: base.kernel.likelihood.map((columns) => surpriseTerms(columns, size)),
    givers: giversOf(rules),
    mends,
    sums: new Float64Array(rules.repairs.length + rules.exits.length),
    totals: new Float64Array(rules.repairs.length + rules.exits.length),
  }
}

const giversOf = (rules: Rules): ReadonlyMap<number, readonly number[]> => {
  const givers = new Map<number, number[]>()
  rules.checks.forEach((check, index) => {
    for (const place of new Set(check.gives.flatMap((marks) => [...marks])))
      givers.set(place, [...(givers.get(place) ?? []), index])
  })
  return givers
}

/**
 * The policy that makes a step next and then searches for the fault: after each outcome the check that tells most per cost,
 * again and again, until mending or stopping by the base policy is worth more. It can be carried out whatever the suspect is,
 * also by one that is not searched among.
 * @param limit how many situations may be looked at
 */
export const policyByDiagnosis = (diagnosis: Diagnosis, step: Step, limit: number): Policy => {
  const [first] = diagnosis.levels
  first.belief.set(diagnosis.base.kernel.belief)
  first.situation.set(diagnosis.rules.start)
  follow(diagnosis, 0, step, limit)
  return first.triedPolicy!
}

/** The checks that tell most per cost at the start, the best first; what must be made before one stands for it. */
export const tellingChecks = (diagnosis: Diagnosis, count: number): readonly number[] => {
  const [first] = diagnosis.levels
  first.belief.set(diagnosis.base.kernel.belief)
  first.situation.set(diagnosis.rules.start)
  noteAlive(first, 1)
  const scored = scoredChecks(diagnosis, first, 1)
  return [...new Set(scored.sort((a, b) => b.score - a.score || a.check - b.check).map(({ check }) => check))].slice(
    0,
    count,
  )
}

/** The step that searching begins with at the start, or null where there is none. */
export const firstStep = (diagnosis: Diagnosis): Step | null => {
  const [first] = diagnosis.levels
  first.belief.set(diagnosis.base.kernel.belief)
  first.situation.set(diagnosis.rules.start)
  return nextStep(diagnosis, first, 1)
}

/**
 * The better of the base policy and searching on, from the belief and situation of a depth. Searching on makes the likeliest
 * mend where one is likely enough, and otherwise the check that tells most. `allowed` situations may be looked at from here.
 */
const walk = (diagnosis: Diagnosis, depth: number, mass: number, allowed: number): number => {
  const { base, levels } = diagnosis
  const level = levels[depth]
  const stopping = baseValue(base, level.belief, mass, level.situation)
  level.chosen = { ...base.choice }
  level.order.set(base.order)
  const deeper = depth < deepest && mass >= leastMass && allowed >= leastAllowed
  const step = deeper ? nextStep(diagnosis, level, mass) : null
  if (step !== null) {
    follow(diagnosis, depth, step, allowed - 1)
    if (level.tried > stopping) {
      level.policy = level.triedPolicy
      return level.tried
    }
  }
  level.policy = chosenPolicy(base, level.chosen, level.order, level.belief, mass, level.situation, negligibleMass)
  return stopping
}

const nextStep = (diagnosis: Diagnosis, level: Level, mass: number): Step | null => {
  noteAlive(level, mass)
  const mend = likelyMend(diagnosis, level, mass)
  if (mend !== -1) return { kind: 'repair', index: mend }
  const check = mostTelling(diagnosis, level, mass)
  return check === -1 ? null : { kind: 'check', index: check }
}

/** The repair that is what to do with at least a given probability and can be made now, or -1. */
const likelyMend = ({ rules, mends, sums }: Diagnosis, level: Level, mass: number): number => {
  sums.fill(0)
  for (let s = 0; s < mends.length; s++) sums[mends[s]] += level.belief[s]
  for (let repair = 0; repair < rules.repairs.length; repair++) {
    if (sums[repair] > mendAt * mass && repairIsOpen(rules, level.situation, repair)) return repair
  }
  return -1
}

/** Makes a step at a depth and walks on from each of its outcomes at the next. */
const follow = (diagnosis: Diagnosis, depth: number, step: Step, allowed: number): void => {
  const { rules, base, levels } = diagnosis
  const level = levels[depth]
  const next = levels[depth + 1]
  level.moved.set(level.situation)
  const minutes = takeStep(rules, level.moved, step)
  const rule = step.kind === 'check' ? rules.checks[step.index] : rules.repairs[step.index]
  const cost = rule.costMinor + minutes * rules.minorPerMin
  const outcomes = step.kind === 'check' ? base.kernel.likelihood[step.index].length : 1
  const whole = sumOf(level.belief)
  let value = 0
  const elsewhere = stopAt(diagnosis, level.belief, level.moved)
  const policies: (Policy | null)[] = Array.from({ length: outcomes }, () => elsewhere)
  for (let outcome = 0; outcome < outcomes; outcome++) {
    next.situation.set(level.moved)
    if (step.kind === 'check') applyOutcome(rules, next.situation, step.index, outcome)
    const mass = learn(diagnosis, level.belief, next.belief, step, outcome)
    if (mass <= 0) continue
    value += walk(diagnosis, depth + 1, mass, (allowed * mass) / whole) - cost * mass
    policies[outcome] = next.policy
  }
  level.tried = value
  level.triedPolicy = { kind: 'step', step, next: policies }
}

/** The best exit that can be taken whatever is held: what follows an outcome that none of the suspects searched among can show. */
const stopAt = ({ rules, base }: Diagnosis, belief: Float64Array, situation: Situation): Policy => {
  const closing = sumOf(belief) * rules.minorPerMin * closingMin(rules, situation)
  const free = rules.exits.flatMap(({ needs, allCoversOn }, exit) =>
    needs.length > 0 ? [] : [{ exit, worth: dot(belief, base.kernel.payoff[exit]) - (allCoversOn ? closing : 0) }],
  )
  return exitPolicy(free.reduce((best, one) => (one.worth > best.worth ? one : best)).exit)
}

const learn = (
  { base, rules }: Diagnosis,
  before: Float64Array,
  after: Float64Array,
  step: Step,
  outcome: number,
): number => {
  if (step.kind === 'check') return multiply(after, before, base.kernel.likelihood[step.index][outcome])
  const { from, to } = base.kernel.transitions[step.index]
  const { success } = rules.repairs[step.index]
  after.set(before)
  for (let i = 0; i < from.length; i++) {
    const mended = success * before[from[i]]
    after[to[i]] += mended
    after[from[i]] -= mended
  }
  return sumOf(after)
}

const sumOf = (belief: Float64Array): number => {
  let sum = 0
  for (let s = 0; s < belief.length; s++) sum += belief[s]
  return sum
}

/** The check that tells most per cost about what to mend; those that tell most of any kind are weighed. */
const mostTelling = (diagnosis: Diagnosis, level: Level, mass: number): number => {
  const weighed = scoredChecks(diagnosis, level, mass).sort((a, b) => b.score - a.score || a.check - b.check)
  let best = -1
  let most = 0
  for (const { check, about, score, costMinor } of weighed.slice(0, weighedChecks)) {
    // No check tells more about what to mend than about the suspects, so those after it cannot tell more either.
    if (score * (1 + roundingShare) < most) break
    const told = mendInformation(diagnosis, level, about)
    if (told <= leastTold * mass || told / costMinor <= most) continue
    most = told / costMinor
    best = check
  }
  return best
}

/** Mutual information between what to mend and the outcome of a check, in nats, times the mass of the belief. */
const mendInformation = ({ base, mends, sums, totals }: Diagnosis, level: Level, check: number): number => {
  const { belief, alive, aliveCount } = level
  let told = 0
  totals.fill(0)
  for (const column of base.kernel.likelihood[check]) {
    sums.fill(0)
    for (let i = 0; i < aliveCount; i++) sums[mends[alive[i]]] += belief[alive[i]] * column[alive[i]]
    let chance = 0
    for (let m = 0; m < sums.length; m++) {
      const part = sums[m]
      if (part <= 0) continue
      chance += part
      totals[m] += part
      told += part * Math.log(part)
    }
    if (chance > 0) told -= chance * Math.log(chance)
  }
  let mass = 0
  for (let m = 0; m < totals.length; m++) {
    if (totals[m] <= 0) continue
    mass += totals[m]
    told -= totals[m] * Math.log(totals[m])
  }
  return told + mass * Math.log(mass)
}

/** `check` is made first; `about` is the one that tells, the same unless it must be prepared. */
type Scored = { readonly check: number; readonly about: number; readonly score: number; readonly costMinor: number }

/**
 * Information per cost of each check not made yet. A check that must be prepared by others, such as running behind its
 * safety checks, bears their cost, and the first of them stands for it.
 */
const scoredChecks = (diagnosis: Diagnosis, level: Level, mass: number): Scored[] => {
  const { rules } = diagnosis
  const scored: Scored[] = []
  for (let check = 0; check < rules.checks.length; check++) {
    if (timesLeft(rules, level.situation, check) <= 0) continue
    const told = informationOf(diagnosis, level, mass, check)
    if (told <= leastTold * mass) continue
    const way = wayTo(diagnosis, level, check)
    if (way === null) continue
    const costMinor = Math.max(way.costMinor, leastCostMinor)
    scored.push({ check: way.first, about: check, score: told / costMinor, costMinor })
  }
  return scored
}

/** The check to make first on the way to a check, and what the way costs; null when a mark it needs cannot be had. */
const wayTo = (
  diagnosis: Diagnosis,
  level: Level,
  check: number,
): { readonly first: number; readonly costMinor: number } | null => {
  const { rules, givers } = diagnosis
  let first = check
  let costMinor = 0
  level.moved.set(level.situation)
  for (const place of rules.checks[check].needs) {
    if (level.moved[place] !== 0) continue
    const giver = givers.get(place)?.find((index) => checkIsOpen(rules, level.moved, index))
    if (giver === undefined) return null
    if (first === check) first = giver
    costMinor += costOf(rules, level.moved, giver)
    level.moved[place] = 1
  }
  if (!holds(level.moved, rules.checks[check].needs)) return null
  return { first, costMinor: costMinor + costOf(rules, level.moved, check) }
}

const costOf = (rules: Rules, situation: Situation, check: number): number =>
  rules.checks[check].costMinor + makeCheck(rules, situation, check) * rules.minorPerMin

/** Mutual information between suspect and outcome, in nats, times the mass of the belief. */
const informationOf = (
  { base, terms }: Diagnosis,
  { belief, alive, aliveCount }: Level,
  mass: number,
  check: number,
): number => {
  let told = sumOver(belief, terms[check], alive, aliveCount)
  for (const column of base.kernel.likelihood[check]) {
    const chance = sumOver(belief, column, alive, aliveCount)
    if (chance > 0) told -= chance * Math.log(chance / mass)
  }
  return told
}

/** Sum of products over some places. */
const sumOver = (a: Float64Array, b: Float64Array, places: Int32Array, count: number): number => {
  let sum = 0
  for (let i = 0; i < count; i++) sum += a[places[i]] * b[places[i]]
  return sum
}

/** Notes which suspects of a level still count; gives back their mass. */
const noteAlive = (level: Level, mass: number): void => {
  const { belief, alive } = level
  const least = mass * leastShare
  let count = 0
  for (let s = 0; s < belief.length; s++) if (belief[s] > least) alive[count++] = s
  level.aliveCount = count
}
