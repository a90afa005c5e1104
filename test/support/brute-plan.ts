import type { PlanMove, PlanProblem } from '../../src/engines/plan/index.ts'

/**
 * A second opinion on plan problems: plain recursion over every move and every outcome, on sets and lists, sharing no code with
 * the engine. Exponential; for problems of a few faults and moves.
 */

/** A moment in a problem: a probability per suspect, and the names of what is off, held and made. */
export type Moment = {
  readonly belief: readonly number[]
  readonly off: readonly string[]
  readonly marks: readonly string[]
  /** A check that has been made twice is named twice. */
  readonly checksDone: readonly string[]
  readonly repairsDone: readonly string[]
}

/** A move's cost and the moments it may lead to, with their probabilities. */
export type Consequence = {
  readonly costMinor: number
  readonly minutes: number
  /** `outcome` is null after a repair. */
  readonly next: readonly { readonly outcome: string | null; readonly probability: number; readonly moment: Moment }[]
}

export const startOf = (plan: PlanProblem): Moment => ({
  belief: plan.suspects.map((suspect) => suspect.probability),
  off: plan.off,
  marks: plan.marks,
  checksDone: plan.checks.flatMap(({ id, done, made, times }) => Array<string>(done ? times : made).fill(id)),
  repairsDone: plan.repairs.filter((repair) => repair.done).map((repair) => repair.id),
})

/** The problem as it stands at a later moment. */
export const problemAt = (plan: PlanProblem, moment: Moment): PlanProblem => ({
  ...plan,
  suspects: plan.suspects.map((suspect, s) => ({ ...suspect, probability: moment.belief[s] })),
  off: [...moment.off],
  marks: [...moment.marks],
  checks: plan.checks.map((check) => ({ ...check, done: false, made: timesMade(moment, check.id) })),
  repairs: plan.repairs.map((repair) => ({ ...repair, done: moment.repairsDone.includes(repair.id) })),
})

const timesMade = (moment: Moment, checkId: string): number => moment.checksDone.filter((id) => id === checkId).length

const hasAll = (held: readonly string[], needs: readonly string[]): boolean =>
  needs.every((mark) => held.includes(mark))

const coversFor = (plan: PlanProblem, wanted: readonly string[]): readonly string[] => [
  ...new Set(
    wanted.flatMap((id) => [...coversFor(plan, plan.covers.find((cover) => cover.id === id)?.after ?? []), id]),
  ),
]

const openCost = (plan: PlanProblem, moment: Moment, wanted: readonly string[]): number =>
  coversFor(plan, wanted)
    .filter((id) => !moment.off.includes(id))
    .reduce((sum, id) => sum + (plan.covers.find((cover) => cover.id === id)?.openMin ?? 0), 0)

const closeCost = (plan: PlanProblem, moment: Moment): number =>
  plan.covers.filter((cover) => moment.off.includes(cover.id)).reduce((sum, cover) => sum + cover.closeMin, 0)

/** Expected money of leaving by an exit; minus infinity where its marks are not held. */
export const exitWorth = (plan: PlanProblem, moment: Moment, exitId: string): number => {
  const exit = plan.exits.find(({ id }) => id === exitId)
  if (exit === undefined || !hasAll(moment.marks, exit.needs)) return -Infinity
  const closing = exit.allCoversOn ? (closeCost(plan, moment) * plan.hourMinor) / 60 : 0
  return exit.payoffMinor.reduce((sum, payoff, s) => sum + payoff * moment.belief[s], 0) - closing
}

/** What a check or a repair leads to; null when it cannot be made at the moment. */
export const consequenceOf = (plan: PlanProblem, moment: Moment, move: PlanMove): Consequence | null => {
  if (move.kind === 'check') return checkConsequence(plan, moment, move.id)
  if (move.kind === 'repair') return repairConsequence(plan, moment, move.id)
  return null
}

const checkConsequence = (plan: PlanProblem, moment: Moment, checkId: string): Consequence | null => {
  const check = plan.checks.find(({ id }) => id === checkId)
  if (check === undefined || !hasAll(moment.marks, check.needs)) return null
  if (timesMade(moment, checkId) >= check.times) return null
  const minutes =
    check.minutes + (check.allCoversOn ? closeCost(plan, moment) : openCost(plan, moment, check.coversOff))
  const off = check.allCoversOn ? [] : [...new Set([...moment.off, ...coversFor(plan, check.coversOff)])]
  const next = check.outcomes.map((outcome, o) => {
    const joint = moment.belief.map((mass, s) => mass * check.likelihood[s][o])
    const probability = joint.reduce((sum, mass) => sum + mass, 0)
    const marks = [...new Set([...moment.marks.filter((mark) => !outcome.takes.includes(mark)), ...outcome.gives])]
    const belief = joint.map((mass) => mass / probability)
    const made = outcome.again ? 1 : check.times - timesMade(moment, checkId)
    const checksDone = [...moment.checksDone, ...Array<string>(made).fill(checkId)]
    return { outcome: outcome.id, probability, moment: { ...moment, belief, off, marks, checksDone } }
  })
  const costMinor = check.costMinor + (minutes * plan.hourMinor) / 60
  return { costMinor, minutes, next: next.filter(({ probability }) => probability > 1e-12) }
}

const repairConsequence = (plan: PlanProblem, moment: Moment, repairId: string): Consequence | null => {
  const repair = plan.repairs.find(({ id }) => id === repairId)
  if (repair === undefined || moment.repairsDone.includes(repairId) || !hasAll(moment.marks, repair.needs)) return null
  const minutes = repair.minutes + openCost(plan, moment, repair.coversOff)
  const belief = plan.suspects.map(() => 0)
  plan.suspects.forEach((suspect, s) => {
    const left = suspect.faults.filter((fault) => !repair.removes.includes(fault))
    const target = plan.suspects.findIndex(
      ({ faults }) => faults.length === left.length && left.every((fault) => faults.includes(fault)),
    )
    belief[target] += repair.success * moment.belief[s]
    belief[s] += (1 - repair.success) * moment.belief[s]
  })
  const renewed = plan.checks
    .filter((check) => check.renewedByRepair && (repair.renews === undefined || repair.renews.includes(check.id)))
    .map((check) => check.id)
  const after: Moment = {
    belief,
    off: [...new Set([...moment.off, ...coversFor(plan, repair.coversOff)])],
    marks: moment.marks.filter((mark) => !repair.takes.includes(mark)),
    checksDone: moment.checksDone.filter((id) => !renewed.includes(id)),
    repairsDone: [...moment.repairsDone, repairId],
  }
  const costMinor = repair.costMinor + repair.breakRisk * repair.breakCostMinor + (minutes * plan.hourMinor) / 60
  return { costMinor, minutes, next: [{ outcome: null, probability: 1, moment: after }] }
}

const keyOf = (moment: Moment): string =>
  JSON.stringify([
    moment.belief.map((mass) => mass.toFixed(12)),
    [moment.off, moment.marks, moment.checksDone, moment.repairsDone].map((names) => [...names].sort()),
  ])

/** The greatest expected money of any policy. */
export const exactWorth = (plan: PlanProblem): number => {
  const known = new Map<string, number>()
  const moves: readonly PlanMove[] = [
    ...plan.checks.map(({ id }): PlanMove => ({ kind: 'check', id })),
    ...plan.repairs.map(({ id }): PlanMove => ({ kind: 'repair', id })),
  ]
  const worth = (moment: Moment): number => {
    const key = keyOf(moment)
    const before = known.get(key)
    if (before !== undefined) return before
    let best = Math.max(...plan.exits.map((exit) => exitWorth(plan, moment, exit.id)))
    for (const move of moves) {
      const consequence = consequenceOf(plan, moment, move)
      if (consequence !== null) best = Math.max(best, mean(consequence, worth))
    }
    known.set(key, best)
    return best
  }
  return worth(startOf(plan))
}

const mean = (consequence: Consequence, worth: (moment: Moment) => number): number =>
  consequence.next.reduce((sum, { probability, moment }) => sum + probability * worth(moment), -consequence.costMinor)

/** The expected money of doing at every moment what `choose` says. */
export const worthOfFollowing = (plan: PlanProblem, choose: (now: PlanProblem) => PlanMove): number => {
  const known = new Map<string, number>()
  const worth = (moment: Moment): number => {
    const key = keyOf(moment)
    const before = known.get(key)
    if (before !== undefined) return before
    const move = choose(problemAt(plan, moment))
    const consequence = consequenceOf(plan, moment, move)
    const value = consequence === null ? exitWorth(plan, moment, move.id) : mean(consequence, worth)
    known.set(key, value)
    return value
  }
  return worth(startOf(plan))
}
