import { openingOrder } from './covers.ts'
import type { PlanProblem } from './schema.ts'

/**
 * What is known for certain at a moment, one byte each: covers off, marks held, how often each check has been made, repairs made,
 * in that order.
 * A plain byte array, so that a look-ahead can copy it without allocating.
 */
export type Situation = Uint8Array

type CheckRule = {
  readonly minutes: number
  readonly costMinor: number
  readonly opens: Int32Array
  readonly allCoversOn: boolean
  readonly needs: Int32Array
  readonly renewed: boolean
  /** How many times it can be made until it is renewed. */
  readonly times: number
  /** Places of the marks each outcome sets and clears. */
  readonly gives: readonly Int32Array[]
  readonly takes: readonly Int32Array[]
  /** Whether the check may be made again after each outcome. */
  readonly again: readonly boolean[]
}

export type RepairRule = {
  readonly minutes: number
  /** Parts and the expected cost of breaking something. */
  readonly costMinor: number
  readonly partsMinor: number
  readonly breakRisk: number
  readonly breakCostMinor: number
  /** Variance of the money lost by breaking something. */
  readonly breakVariance: number
  readonly opens: Int32Array
  readonly needs: Int32Array
  readonly takes: Int32Array
  /** Places of the checks that it makes worth making again. */
  readonly renews: Int32Array
  readonly success: number
}

export type ExitRule = { readonly needs: Int32Array; readonly allCoversOn: boolean }

/** The parts of a problem that do not depend on the suspects, with names turned into places in the situation. */
export type Rules = {
  readonly minorPerMin: number
  readonly coverCount: number
  readonly checkAt: number
  readonly repairAt: number
  readonly openMin: Float64Array
  readonly closeMin: Float64Array
  readonly checks: readonly CheckRule[]
  readonly repairs: readonly RepairRule[]
  readonly exits: readonly ExitRule[]
  readonly markNames: readonly string[]
  readonly start: Situation
}

export const rulesOf = (plan: PlanProblem): Rules => {
  const markNames = marksOf(plan)
  const coverAt = places(plan.covers.map((cover) => cover.id), 0) // prettier-ignore
  const markAt = places(markNames, plan.covers.length)
  const opens = (off: readonly string[]): Int32Array => at(coverAt, openingOrder(plan.covers, off))
  const checkAt = plan.covers.length + markNames.length
  return {
    minorPerMin: plan.hourMinor / 60,
    coverCount: plan.covers.length,
    checkAt,
    repairAt: checkAt + plan.checks.length,
    openMin: Float64Array.from(plan.covers, (cover) => cover.openMin),
    closeMin: Float64Array.from(plan.covers, (cover) => cover.closeMin),
    checks: plan.checks.map((check) => ({
      minutes: check.minutes,
      costMinor: check.costMinor,
      opens: opens(check.coversOff),
      allCoversOn: check.allCoversOn,
      needs: at(markAt, check.needs),
      renewed: check.renewedByRepair,
      times: check.times,
      gives: check.outcomes.map((outcome) => at(markAt, outcome.gives)),
      takes: check.outcomes.map((outcome) => at(markAt, outcome.takes)),
      again: check.outcomes.map((outcome) => outcome.again),
    })),
    repairs: plan.repairs.map((repair) => ({
      minutes: repair.minutes,
      costMinor: repair.costMinor + repair.breakRisk * repair.breakCostMinor,
      partsMinor: repair.costMinor,
      breakRisk: repair.breakRisk,
      breakCostMinor: repair.breakCostMinor,
      breakVariance: repair.breakRisk * (1 - repair.breakRisk) * repair.breakCostMinor ** 2,
      opens: opens(repair.coversOff),
      needs: at(markAt, repair.needs),
      takes: at(markAt, repair.takes),
      renews: renewedBy(plan, repair, checkAt),
      success: repair.success,
    })),
    exits: plan.exits.map((exit) => ({ needs: at(markAt, exit.needs), allCoversOn: exit.allCoversOn })),
    markNames,
    start: startOf(plan, markNames),
  }
}

const renewedBy = (plan: PlanProblem, repair: PlanProblem['repairs'][number], checkAt: number): Int32Array =>
  Int32Array.from(
    plan.checks.flatMap((check, index) =>
      check.renewedByRepair && repair.renews?.includes(check.id) !== false ? [checkAt + index] : [],
    ),
  )

const marksOf = (plan: PlanProblem): readonly string[] => {
  const outcomes = plan.checks.flatMap((check) => check.outcomes)
  const named = [
    ...plan.marks,
    ...outcomes.flatMap((outcome) => [...outcome.gives, ...outcome.takes]),
    ...plan.repairs.flatMap((repair) => [...repair.needs, ...repair.takes]),
    ...[...plan.checks, ...plan.exits].flatMap((item) => item.needs),
  ]
  return [...new Set(named)]
}

const places = (ids: readonly string[], from: number): ReadonlyMap<string, number> =>
  new Map(ids.map((id, index) => [id, from + index]))

const at = (placeOf: ReadonlyMap<string, number>, ids: readonly string[]): Int32Array =>
  Int32Array.from(ids, (id) => placeOf.get(id) ?? -1)

const startOf = (plan: PlanProblem, markNames: readonly string[]): Situation =>
  Uint8Array.from([
    ...plan.covers.map((cover) => plan.off.includes(cover.id)),
    ...markNames.map((mark) => plan.marks.includes(mark)),
    ...plan.checks.map((check) => (check.done ? check.times : Math.min(check.made, check.times))),
    ...plan.repairs.map((repair) => repair.done),
  ].map(Number)) // prettier-ignore

/** Whether every place named is set. */
export const holds = (situation: Situation, needs: Int32Array): boolean => {
  for (let i = 0; i < needs.length; i++) if (situation[needs[i]] === 0) return false
  return true
}

/** How many times a check can still be made before a repair renews it. */
export const timesLeft = (rules: Rules, situation: Situation, check: number): number =>
  rules.checks[check].times - situation[rules.checkAt + check]

export const checkIsOpen = (rules: Rules, situation: Situation, check: number): boolean =>
  timesLeft(rules, situation, check) > 0 && holds(situation, rules.checks[check].needs)

export const repairIsOpen = (rules: Rules, situation: Situation, repair: number): boolean =>
  situation[rules.repairAt + repair] === 0 && holds(situation, rules.repairs[repair].needs)

/** Minutes to put back every cover that is off. */
export const closingMin = (rules: Rules, situation: Situation): number => {
  let minutes = 0
  for (let i = 0; i < rules.coverCount; i++) if (situation[i] !== 0) minutes += rules.closeMin[i]
  return minutes
}

/** Minutes to take off those of the covers named that are on. */
const openingMin = (rules: Rules, situation: Situation, opens: Int32Array): number => {
  let minutes = 0
  for (let i = 0; i < opens.length; i++) if (situation[opens[i]] === 0) minutes += rules.openMin[opens[i]]
  return minutes
}

/** Makes a check in the situation, short of its outcome; gives back the minutes, covers included. */
export const makeCheck = (rules: Rules, situation: Situation, check: number): number => {
  const rule = rules.checks[check]
  let minutes = rule.minutes
  if (rule.allCoversOn) {
    minutes += closingMin(rules, situation)
    situation.fill(0, 0, rules.coverCount)
  } else {
    minutes += openingMin(rules, situation, rule.opens)
    for (let i = 0; i < rule.opens.length; i++) situation[rule.opens[i]] = 1
  }
  situation[rules.checkAt + check]++
  return minutes
}

/** Sets the marks of an outcome: those it takes are cleared, then those it gives are set. Notes whether there is an again. */
export const applyOutcome = (rules: Rules, situation: Situation, check: number, outcome: number): void => {
  const { gives, takes, again, times } = rules.checks[check]
  if (!again[outcome]) situation[rules.checkAt + check] = times
  mark(situation, takes[outcome], 0)
  mark(situation, gives[outcome], 1)
}

export const mark = (situation: Situation, marks: Int32Array, value: 0 | 1): void => {
  for (let i = 0; i < marks.length; i++) situation[marks[i]] = value
}

/** Makes a repair in the situation; gives back the minutes, covers included. */
export const makeRepair = (rules: Rules, situation: Situation, repair: number): number => {
  const rule = rules.repairs[repair]
  const minutes = rule.minutes + openingMin(rules, situation, rule.opens)
  for (let i = 0; i < rule.opens.length; i++) situation[rule.opens[i]] = 1
  mark(situation, rule.takes, 0)
  situation[rules.repairAt + repair] = 1
  mark(situation, rule.renews, 0)
  return minutes
}
