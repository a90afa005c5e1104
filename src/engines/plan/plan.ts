import { diagnosisOf, firstStep, tellingChecks, valueByDiagnosis, type Diagnosis } from './diagnose.ts'
import { kernelOf, likeliest } from './kernel.ts'
import {
  bestFollowUps,
  lookAheadOf,
  takeStep,
  valueAtStart,
  valueOfStep,
  type LookAhead,
  type Step,
} from './look-ahead.ts'
import { exitWorths, ranking, type Candidate } from './ranking.ts'
import { checkIsOpen, repairIsOpen, rulesOf, type Rules } from './rules.ts'
import type { PlanAnswer, PlanMove, PlanProblem, RankedMove } from './schema.ts'
import { upperBoundOf } from './upper-bound.ts'

export type PlanOptions = {
  /** Base policy values that may be worked out for the second step of the look-ahead. The first step is always whole. */
  readonly steps?: number
  /** How many times the usual work the search for the fault may do; for a machine that has the time. */
  readonly effort?: number
}

const defaultSteps = 4000
/** First moves whose second step is looked at. */
const deepenedMoves = 8
/** Policies are chosen on the likeliest suspects with this share of the belief, and on no more than so many. */
const chosenShare = 0.995
const chosenSuspects = 64
/** First moves that a search for the fault is tried after: so many of the best, and so many of the most telling. */
const searchedMoves = 4
/** Situations times suspects that all searches together may look at. */
const searchWork = 250_000
/** Repairs are searched after too when what they mend is at least this likely. */
const leastUse = 0.3
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
  const diagnosis = diagnosisOf(ahead)
  const effort = options.effort ?? 1
  const candidates = searchFor(diagnosis, ahead, lookTwoSteps(ahead, looked, steps), steps, effort)
  const exits = exitWorths(problem, rules, kernel)
  const ranked = ranking(problem, rules, kernel, candidates, exits)
  const [best] = ranked
  const { minutes, spreadMinor } = underPolicy(ahead, diagnosis, best, placeOf(problem, best.move), candidates)
  return {
    kind: 'planned',
    best: best.move,
    lowerMinor: best.expectedMinor,
    upperMinor: roundedUp(upperBoundOf(rules, kernel), best.expectedMinor),
    spreadMinor,
    expectedMin: minutes,
    ranked,
    exits,
  }
}

const lists = { check: 'checks', repair: 'repairs', exit: 'exits' } as const

const placeOf = (problem: PlanProblem, move: PlanMove): number =>
  problem[lists[move.kind]].findIndex((item) => item.id === move.id)

/** Every check and repair that can be made now, with the value of making it and then following the base policy. */
const lookOneStep = (ahead: LookAhead): readonly Candidate[] => {
  const baseMinor = valueAtStart(ahead).value
  return openSteps(ahead.rules).map((step) => {
    const { value } = valueOfStep(ahead, 0, step, null, 'whole')
    return {
      step,
      value,
      follow: null,
      searched: false,
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
    const { value } = valueOfStep(ahead, 0, candidate.step, follow, 'whole')
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
 * The best first moves once more, and the most telling ones, each followed by a search for the fault. What a search may look
 * at is bounded by the number of suspects, so that large problems take no longer.
 */
const searchFor = (
  diagnosis: Diagnosis,
  ahead: LookAhead,
  candidates: readonly Candidate[],
  steps: number,
  effort: number,
): readonly Candidate[] => {
  const telling = new Set(tellingChecks(diagnosis, searchedMoves))
  const best = new Set([...candidates].sort((a, b) => b.value - a.value).slice(0, searchedMoves))
  const first = firstStep(diagnosis)
  const chosen = candidates.filter(
    (one) =>
      best.has(one) ||
      (one.step.kind === 'check' && telling.has(one.step.index)) ||
      (one.step.kind === first?.kind && one.step.index === first.index) ||
      (one.step.kind === 'repair' && chanceOfUse(ahead, one.step.index) >= leastUse),
  )
  const limit = Math.floor((effort * Math.min(steps, searchWork / ahead.whole.base.kernel.size)) / searchedMoves)
  const baseMinor = valueAtStart(ahead).value
  return candidates.map((candidate) => {
    if (limit < 2 || !chosen.includes(candidate)) return candidate
    const { value } = valueByDiagnosis(diagnosis, candidate.step, limit, false)
    if (value <= candidate.value) return candidate
    const information = Math.max(candidate.information, value + ownCost(ahead, candidate.step) - baseMinor)
    return { ...candidate, value, searched: true, information }
  })
}

/** Probability of the suspects that a repair changes. */
const chanceOfUse = ({ whole }: LookAhead, repair: number): number => {
  const { belief, transitions } = whole.base.kernel
  return transitions[repair].from.reduce((sum, s) => sum + belief[s], 0)
}

/** Expected minutes and spread of the money under the policy behind a move. */
const underPolicy = (
  ahead: LookAhead,
  diagnosis: Diagnosis,
  best: RankedMove,
  place: number,
  candidates: readonly Candidate[],
): { readonly minutes: number; readonly spreadMinor: number } => {
  const { rules, whole } = ahead
  const { kernel } = whole.base
  const candidate = candidates.find(({ step }) => step.kind === best.move.kind && step.index === place)
  if (candidate === undefined) {
    const spent = best.minutes * rules.minorPerMin
    const spread = (sum: number, mass: number, s: number): number =>
      sum + mass * (kernel.payoff[place][s] - spent - best.expectedMinor) ** 2
    return { minutes: best.minutes, spreadMinor: Math.sqrt(kernel.belief.reduce(spread, 0)) }
  }
  const tally = candidate.searched
    ? valueByDiagnosis(diagnosis, candidate.step, diagnosis.limit, true)
    : valueOfStep(ahead, 0, candidate.step, candidate.follow, 'whole with squares')
  return { minutes: tally.minutes, spreadMinor: Math.sqrt(Math.max(0, tally.second - tally.value ** 2)) }
}

/** The upper bound, raised to the lower one where it falls short of it by no more than rounding. */
const roundedUp = (upperMinor: number, lowerMinor: number): number => {
  const slack = roundingShare * Math.max(Math.abs(upperMinor), Math.abs(lowerMinor))
  return upperMinor < lowerMinor && lowerMinor - upperMinor <= slack ? lowerMinor : upperMinor
}
