import type { PlanProblem } from '../../src/engines/plan/index.ts'
import { bestExit } from './exits.ts'
import { untriedRepairs, type Decision, type Position, type Rival } from './game.ts'
import { proofOf, provedExit } from './proof.ts'
import { checkWork, openChecks, repairWork, type Check } from './work.ts'

/** Who asks first mends once a fault is this likely, and gives up when no check tells this much (nats) or it took so long. */
const mendAt = 0.75
const leastTold = 0.01
const mostMinutes = 120

/** Gives the check to make next, or null when none is left worth making. */
type Rule = (problem: PlanProblem, open: readonly Check[]) => Check | null

/** The trade's order for a dead machine: plug and fuse, flex, switch, cut-out, brushes, motor (trade figures, order of work). */
const tradeOrder = [
  'fuse-through', 'look-plug', 'pins-bend-plug-end', 'pins-bend-entry', 'line-pin-to-entry', 'neutral-pin-to-entry',
  'pins-work-switch', 'switch-closed', 'switch-terminal-through', 'loom-line-through', 'loom-neutral-through', 'cut-out-through',
  'motor-terminal-through', 'carbon-length', 'motor-at-leads-turning', 'motor-at-leads',
] // prettier-ignore

/** What a check is expected to tell about the suspects: mutual information in nats. */
const told = (problem: PlanProblem, check: Check): number => {
  let nats = 0
  check.outcomes.forEach((_, o) => {
    const chance = problem.suspects.reduce((sum, { probability }, s) => sum + probability * check.likelihood[s][o], 0)
    problem.suspects.forEach(({ probability }, s) => {
      const p = check.likelihood[s][o]
      if (p > 0 && probability > 0) nats += probability * p * Math.log(p / chance)
    })
  })
  return nats
}

const mostTelling =
  (costOf: (problem: PlanProblem, check: Check) => number): Rule =>
  (problem, open) =>
    open
      .map((check) => ({ check, nats: told(problem, check) }))
      .filter(({ nats }) => nats >= leastTold)
      .map(({ check, nats }) => ({ check, value: nats / costOf(problem, check) }))
      .sort((a, b) => b.value - a.value)
      .at(0)?.check ?? null

const fixedOrder: Rule = (_problem, open) =>
  tradeOrder.flatMap((id) => open.filter((check) => check.id === id)).at(0) ?? null

/** The cheapest way to remove the likeliest fault, once it is likely enough. A way that was tried is not tried again. */
const wantedRepair = (at: Position): string | undefined => {
  const { problem } = at
  const chance = new Map<string, number>()
  for (const { faults, probability } of problem.suspects)
    for (const fault of faults) chance.set(fault, (chance.get(fault) ?? 0) + probability)
  const [lead] = [...chance].sort((a, b) => b[1] - a[1])
  if (lead === undefined || lead[1] < mendAt) return undefined
  return untriedRepairs(at)
    .filter((one) => one.removes.includes(lead[0]))
    .map((one) => ({ id: one.id, minor: repairWork(problem, one).minor / one.success }))
    .sort((a, b) => a.minor - b.minor)
    .at(0)?.id
}

/** Mends what is likely; before that asks by its rule; then the proof; then leaves by the exit that brings most. */
const askFirst =
  (rule: Rule) =>
  (at: Position): Decision => {
    const { problem, minutes } = at
    const repair = wantedRepair(at)
    if (repair !== undefined) return { kind: 'repair', id: repair }
    const { needs } = provedExit(problem)
    if (needs.every((mark) => problem.marks.includes(mark))) return { kind: 'exit', id: bestExit(problem).exit.id }
    const proof = proofOf(problem, needs)
    const gates = new Set(proof?.map(({ check }) => check.id))
    const open = openChecks(problem).filter((check) => !gates.has(check.id))
    const next = (minutes > mostMinutes ? null : rule(problem, open)) ?? proof?.[0]?.check
    return next === undefined ? { kind: 'exit', id: bestExit(problem).exit.id } : { kind: 'check', id: next.id }
  }

export const tradesOrder: Rival = { name: 'the trade’s fixed order', told: false, decide: askFirst(fixedOrder) }

export const byEntropy: Rival = {
  name: 'entropy, cost left out',
  told: false,
  decide: askFirst(mostTelling(() => 1)),
}

export const byInformationPerMinute: Rival = {
  name: 'information per minute',
  told: false,
  decide: askFirst(mostTelling((problem, check) => checkWork(problem, check).minutes)),
}
