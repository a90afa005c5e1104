import { closingOrder, openingOrder } from './covers.ts'
import type { Kernel } from './kernel.ts'
import { takeStep, type Step } from './step.ts'
import type { Policy } from './policy.ts'
import { closingMin, type Rules } from './rules.ts'
import type { ExitWorth, PlanMove, PlanProblem, RankedMove } from './schema.ts'

/** A check or repair that can be made now, with what is known of it. */
export type Candidate = {
  readonly step: Step
  /** Expected money of the policy that begins with it. */
  readonly value: number
  /** By outcome, the check that follows, or -1; null when the base policy follows every outcome. */
  readonly follow: Int32Array | null
  /** The policy that begins with it, where that is not the one that `follow` tells of. */
  readonly policy: Policy | null
  /** Expected money with its answer, its cost not taken off, less the money without it. */
  readonly information: number
}

/** What each exit is worth now, in the order of the problem, whether or not its marks are held. */
export const exitWorths = (plan: PlanProblem, rules: Rules, kernel: Kernel): readonly ExitWorth[] =>
  plan.exits.map((exit, index) => {
    const closing = exit.allCoversOn ? closingMin(rules, rules.start) : 0
    const money = kernel.belief.reduce((sum, mass, s) => sum + mass * kernel.payoff[index][s], 0)
    return {
      id: exit.id,
      expectedMinor: money - rules.minorPerMin * closing,
      missing: exit.needs.filter((mark) => !plan.marks.includes(mark)),
    }
  })

/** Money below this share of what is at stake is rounding. */
const roundingShare = 1e-12

/** A tie goes to the exit, then to a check that tells something, then to a repair. */
const tieOrder = (move: RankedMove, roundingMinor: number): number => {
  switch (move.move.kind) {
    case 'exit':
      return 0
    case 'check':
      return move.informationMinor > roundingMinor ? 1 : 3
    case 'repair':
      return 2
  }
}

/** Every move that can be made now, best first. */
export const ranking = (
  plan: PlanProblem,
  rules: Rules,
  kernel: Kernel,
  candidates: readonly Candidate[],
  exits: readonly ExitWorth[],
): readonly RankedMove[] => {
  const moves = [
    ...exits.flatMap((exit, index) => (exit.missing.length === 0 ? [exitMove(plan, rules, exit, index)] : [])),
    ...candidates.map((candidate) => stepMove(plan, rules, kernel, candidate)),
  ]
  const stake = Math.max(...kernel.payoff.map((column) => column.reduce((most, x) => Math.max(most, Math.abs(x)), 0)))
  const roundingMinor = roundingShare * Math.max(stake, Number.MIN_VALUE / roundingShare)
  return moves
    .map((move) => ({
      move,
      grade: Math.round(move.expectedMinor / roundingMinor),
      order: tieOrder(move, roundingMinor),
    }))
    .sort((a, b) => b.grade - a.grade || a.order - b.order)
    .map(({ move }) => move)
}

const exitMove = (plan: PlanProblem, rules: Rules, worth: ExitWorth, index: number): RankedMove => {
  const closes = plan.exits[index].allCoversOn
  return {
    move: { kind: 'exit', id: worth.id },
    expectedMinor: worth.expectedMinor,
    minutes: closes ? closingMin(rules, rules.start) : 0,
    informationMinor: 0,
    outcomeProbability: [],
    lossProbability: null,
    open: [],
    close: closes ? closingOrder(plan.covers, plan.off) : [],
  }
}

const stepMove = (plan: PlanProblem, rules: Rules, kernel: Kernel, candidate: Candidate): RankedMove => {
  const { step, value, information } = candidate
  const check = step.kind === 'check' ? plan.checks[step.index] : undefined
  const coversOff = (check ?? plan.repairs[step.index]).coversOff
  const move: PlanMove =
    step.kind === 'check'
      ? { kind: 'check', id: plan.checks[step.index].id }
      : { kind: 'repair', id: plan.repairs[step.index].id }
  return {
    move,
    expectedMinor: value,
    minutes: takeStep(rules, rules.start.slice(), step),
    informationMinor: check === undefined ? 0 : information,
    outcomeProbability: check === undefined ? [] : outcomeProbabilities(kernel, step.index),
    lossProbability: null,
    open: openingOrder(plan.covers, coversOff).filter((cover) => !plan.off.includes(cover)),
    close: check?.allCoversOn === true ? closingOrder(plan.covers, plan.off) : [],
  }
}

const outcomeProbabilities = (kernel: Kernel, check: number): readonly number[] =>
  kernel.likelihood[check].map((column) => column.reduce((sum, chance, s) => sum + chance * kernel.belief[s], 0))
