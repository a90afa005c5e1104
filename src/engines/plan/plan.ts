import { diagnosisOf, firstStep, policyByDiagnosis, tellingChecks, type Diagnosis } from './diagnose.ts'
import { baseWorkOf } from './base-work.ts'
import { dot } from './dot.ts'
import { kernelOf, likeliest, type Kernel } from './kernel.ts'
import { bestFollowUps, lookAheadOf, policyOfStep, valueAtStart, valueOfStep, type LookAhead } from './look-ahead.ts'
import { chanceBelow } from './loss.ts'
import { graphOf, policyIn } from './policy-graph.ts'
import { canFollow, exitPolicy, moneyBySuspect, outlookOf, type Policy } from './policy.ts'
import { exitWorths, ranking, type Candidate } from './ranking.ts'
import { checkIsOpen, repairIsOpen, rulesOf, type Rules } from './rules.ts'
import type { PlanAnswer, PlanMove, PlanProblem, PolicyPoint, RankedMove } from './schema.ts'
import { takeStep, type Step } from './step.ts'
import { targetsOf } from './targets.ts'
import { upperBoundOf } from './upper-bound.ts'

export type PlanOptions = {
  /** Base policy values that may be worked out for the second step of the look-ahead. The first step is always whole. */
  readonly steps?: number
  /** How many times the usual work the search for the fault may do; for a machine that has the time. */
  readonly effort?: number
  /** Where it is given, `best` is the move with most expected money of those that seldom end badly, or else the one that does least often. */
  readonly risk?: Risk
  /** False leaves the policy out of the answer, which saves naming its thousands of points. */
  readonly withPolicy?: boolean
  /** A policy from an earlier answer, from the point that has been come to: it is followed where nothing better is found. */
  readonly known?: readonly PolicyPoint[]
}

/** Money from here on below a sum is bad, and may happen with this probability at most. */
export type Risk = { readonly belowMinor: number; readonly atMost: number }

const defaultSteps = 4000
/** First moves whose second step is looked at. */
const deepenedMoves = 8
/** Policies are chosen on the likeliest suspects with this share of the belief, and on no more than so many. */
const chosenShare = 0.995
const chosenSuspects = 64
/** First moves that a search for the fault is tried after: so many of the best, and so many of the most telling. */
const searchedMoves = 4
/** The suspects searched among: all where they are few; else the likeliest with this share of the belief, and no more than so many. */
const fewSuspects = 40
const searchedShare = 0.99
const searchedSuspects = 128
/** Situations times suspects that all searches together may look at, but for a first try of this share for each move. */
const searchWork = 50_000
const firstShare = 0.05
/** So many of the best are searched after again, with all the work. */
const searchedAgain = 3
/** Repairs are searched after too when what they mend is at least this likely. */
const leastUse = 0.3
/** So many of the best moves, and every exit, have their chance of ending badly worked out where it is asked for. */
const riskedMoves = 8
/** Probabilities that differ by no more than this are taken for the same. */
const sameChance = 1e-3
/** What two bounds may differ by from rounding alone, as a share of the money at stake. */
const roundingShare = 1e-10

/**
 * What to do next with most expected money, by looking two moves ahead over a base policy. Every figure is exact for the
 * policy it belongs to; `lowerMinor` and `upperMinor` enclose the optimum. Same problem, same answer. See docs/plan-engine.md.
 * @param problem one that `checkPlanProblem` has passed
 */
export const plan = (problem: PlanProblem, options: PlanOptions = {}): PlanAnswer => {
  const rules = rulesOf(problem)
  const kernel = kernelOf(problem)
  const near = kernel.size > chosenSuspects ? likeliest(kernel, chosenShare, chosenSuspects) : kernel
  const ahead = lookAheadOf(rules, kernel, near)
  const looked = lookOneStep(ahead)
  const steps = options.steps ?? defaultSteps
  const searched = kernel.size > fewSuspects ? likeliest(kernel, searchedShare, searchedSuspects) : kernel
  const diagnosis = diagnosisOf(rules, baseWorkOf(rules, searched, targetsOf(rules, searched, ahead.goals)))
  const effort = options.effort ?? 1
  const found = searchFor(
    diagnosis,
    ahead,
    lookTwoSteps(ahead, looked, kernel.size > fewSuspects ? steps / 8 : steps),
    steps,
    effort,
  )
  const candidates = withKnown(problem, rules, kernel, found, options.known ?? [])
  const exits = exitWorths(problem, rules, kernel)
  const ranked = ranking(problem, rules, kernel, candidates, exits)
  const policyFor = ({ move }: RankedMove): Policy => policyBehind(ahead, candidates, move.kind, placeOf(problem, move))
  const weighed = options.risk === undefined ? ranked : weighRisk(rules, kernel, ranked, policyFor, options.risk)
  const [best] = weighed
  const policy = policyFor(best)
  const outlook = outlookOf(rules, kernel, policy, rules.start)
  return {
    kind: 'planned',
    best: best.move,
    lowerMinor: best.expectedMinor,
    upperMinor: roundedUp(upperBoundOf(rules, kernel), ranked[0].expectedMinor),
    spreadMinor: Math.sqrt(Math.max(0, dot(kernel.belief, outlook.square) - best.expectedMinor ** 2)),
    expectedMin: dot(kernel.belief, outlook.minutes),
    policy: options.withPolicy === false ? [] : graphOf(problem, policy),
    ranked: weighed,
    exits,
  }
}

/** The best moves with their chance of ending badly, the one to make first. */
const weighRisk = (
  rules: Rules,
  kernel: Kernel,
  ranked: readonly RankedMove[],
  policyFor: (move: RankedMove) => Policy,
  { belowMinor, atMost }: Risk,
): readonly RankedMove[] => {
  const weighed = ranked.map((move, place) =>
    place < riskedMoves || move.move.kind === 'exit'
      ? { ...move, lossProbability: chanceBelow(rules, kernel, policyFor(move), belowMinor) }
      : move,
  )
  const known = weighed.filter(({ lossProbability }) => lossProbability !== null)
  const least = Math.min(...known.map(({ lossProbability }) => lossProbability!))
  const within = Math.max(atMost, least + sameChance)
  const chosen = known.find(({ lossProbability }) => lossProbability! <= within)!
  return [chosen, ...weighed.filter((move) => move !== chosen)]
}

const lists = { check: 'checks', repair: 'repairs', exit: 'exits' } as const

const placeOf = (problem: PlanProblem, move: PlanMove): number =>
  problem[lists[move.kind]].findIndex((item) => item.id === move.id)

/** Every check and repair that can be made now, with the value of making it and then following the base policy. */
const lookOneStep = (ahead: LookAhead): readonly Candidate[] => {
  const baseMinor = valueAtStart(ahead)
  return openSteps(ahead.rules).map((step) => {
    const value = valueOfStep(ahead, 0, step, null, 'whole')
    return {
      step,
      value,
      follow: null,
      policy: null,
      information: Math.max(0, value + ownCost(ahead, step) - baseMinor),
    }
  })
}

const openSteps = (rules: Rules): readonly Step[] => [
  ...[...rules.checks.keys()]
    .filter((index) => checkIsOpen(rules, rules.start, index))
    .map((index): Step => ({ kind: 'check', index })),
  ...[...rules.repairs.keys()]
    .filter((index) => repairIsOpen(rules, rules.start, index))
    .map((index): Step => ({ kind: 'repair', index })),
]

/** What the step itself costs, covers included. */
const ownCost = (ahead: LookAhead, step: Step): number => {
  const { rules } = ahead
  const { costMinor } = step.kind === 'check' ? rules.checks[step.index] : rules.repairs[step.index]
  return costMinor + rules.minorPerMin * takeStep(rules, rules.start.slice(), step)
}

/**
 * The best first moves again, with the best check after each of their outcomes weighed in. The checks are chosen on the
 * likeliest suspects only; the value is then worked out on all of them.
 */
const lookTwoSteps = (ahead: LookAhead, looked: readonly Candidate[], steps: number): readonly Candidate[] => {
  const limit = ahead.near.base.steps + steps
  const deeper = new Map<Candidate, Candidate>()
  for (const candidate of [...looked].sort((a, b) => b.value - a.value).slice(0, deepenedMoves)) {
    if (ahead.near.base.steps >= limit) break
    const follow = bestFollowUps(ahead, candidate.step, limit)
    const value = valueOfStep(ahead, 0, candidate.step, follow, 'whole')
    if (value > candidate.value) deeper.set(candidate, { ...candidate, value, follow })
  }
  const withInformation = ([candidate, deep]: readonly [Candidate, Candidate]): readonly [Candidate, Candidate] => {
    const without = Math.max(...looked.filter((other) => other !== candidate).map((other) => other.value))
    const information = Math.max(candidate.information, deep.value + ownCost(ahead, candidate.step) - without)
    return [candidate, { ...deep, information }]
  }
  const known = new Map([...deeper].map(withInformation))
  return looked.map((candidate) => known.get(candidate) ?? candidate)
}

/**
 * The best first moves once more, and the most telling ones, each followed by a search for the fault: first all of them with
 * little work, then the best few with most of it. What a search may look at is bounded by the number of suspects, so that large
 * problems take no longer.
 */
const searchFor = (
  diagnosis: Diagnosis,
  ahead: LookAhead,
  candidates: readonly Candidate[],
  steps: number,
  effort: number,
): readonly Candidate[] => {
  const limit = Math.floor(effort * Math.min(steps, searchWork / diagnosis.base.kernel.size))
  const baseMinor = valueAtStart(ahead)
  const searched = (candidate: Candidate, share: number): Candidate => {
    if (limit * share < 2) return candidate
    const policy = policyByDiagnosis(diagnosis, candidate.step, limit * share)
    const value = worthOf(ahead.whole.base.kernel, ahead.rules, policy)
    if (value <= candidate.value) return candidate
    const information = Math.max(candidate.information, value + ownCost(ahead, candidate.step) - baseMinor)
    return { ...candidate, value, policy, information }
  }
  const worthSearching = searchedFirst(diagnosis, ahead, candidates)
  const tried = candidates.map((one) => (worthSearching.has(one) ? searched(one, firstShare) : one))
  const best = new Set(tried.filter(({ policy }) => policy !== null).sort((a, b) => b.value - a.value).slice(0, searchedAgain)) // prettier-ignore
  return tried.map((one) => (best.has(one) ? searched(one, 1 / searchedAgain) : one))
}

/** The moves to search after: the best so far, the most telling, what a search would begin with, and repairs that are likely right. */
const searchedFirst = (
  diagnosis: Diagnosis,
  ahead: LookAhead,
  candidates: readonly Candidate[],
): ReadonlySet<Candidate> => {
  const telling = new Set(tellingChecks(diagnosis, searchedMoves))
  const best = new Set([...candidates].sort((a, b) => b.value - a.value).slice(0, searchedMoves))
  const first = firstStep(diagnosis)
  return new Set(
    candidates.filter(
      (one) =>
        best.has(one) ||
        (one.step.kind === 'check' && telling.has(one.step.index)) ||
        (one.step.kind === first?.kind && one.step.index === first.index) ||
        (one.step.kind === 'repair' && chanceOfUse(ahead, one.step.index) >= leastUse),
    ),
  )
}

const worthOf = (kernel: Kernel, rules: Rules, policy: Policy): number =>
  dot(kernel.belief, moneyBySuspect(rules, kernel, policy, rules.start))

/** Probability of the suspects that a repair changes. */
const chanceOfUse = ({ whole }: LookAhead, repair: number): number => {
  const { belief, transitions } = whole.base.kernel
  return transitions[repair].from.reduce((sum, s) => sum + belief[s], 0)
}

/** The candidates with a policy that was given in the place of its first move's, where it can be followed here and is worth more. */
const withKnown = (
  problem: PlanProblem,
  rules: Rules,
  kernel: Kernel,
  candidates: readonly Candidate[],
  known: readonly PolicyPoint[],
): readonly Candidate[] => {
  const given = policyIn(problem, known)
  if (given === null || given.kind === 'exit' || !canFollow(rules, given, rules.start)) return candidates
  const value = worthOf(kernel, rules, given)
  return candidates.map((candidate) => {
    const begins = candidate.step.kind === given.step.kind && candidate.step.index === given.step.index
    return begins && value > candidate.value ? { ...candidate, value, policy: given } : candidate
  })
}

/** The policy behind a ranked move, whose expected money is the move's. */
const policyBehind = (
  ahead: LookAhead,
  candidates: readonly Candidate[],
  kind: PlanMove['kind'],
  place: number,
): Policy => {
  const candidate = candidates.find(({ step }) => step.kind === kind && step.index === place)
  if (candidate === undefined) return exitPolicy(place)
  return candidate.policy ?? policyOfStep(ahead, 0, candidate.step, candidate.follow)
}

/** The upper bound, raised to the lower one where it falls short of it by no more than rounding. */
const roundedUp = (upperMinor: number, lowerMinor: number): number => {
  const slack = roundingShare * Math.max(Math.abs(upperMinor), Math.abs(lowerMinor))
  return upperMinor < lowerMinor && lowerMinor - upperMinor <= slack ? lowerMinor : upperMinor
}
