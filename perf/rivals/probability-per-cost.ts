import type { PlanProblem } from '../../src/engines/plan/index.ts'
import { bestExit } from './exits.ts'
import { untriedRepairs, type Decision, type Position, type Rival } from './game.ts'
import { proofMinor, proofOf, provedExit } from './proof.ts'
import { repairWork, type Repair } from './work.ts'

/** Probability that a repair takes away a fault that is there. */
const chanceOfCure = ({ suspects }: PlanProblem, { removes, success }: Repair): number =>
  suspects.reduce(
    (sum, { faults, probability }) => (faults.some((fault) => removes.includes(fault)) ? sum + probability : sum),
    0,
  ) * success

/** After a repair its proof is made, up to the check that fails. */
const isProving = ({ problem, events }: Position): boolean => {
  const last = events.at(-1)
  if (last?.kind === 'repaired') return true
  if (last?.kind !== 'reading' || !events.some((event) => event.kind === 'repaired')) return false
  const check = problem.checks.find(({ id }) => id === last.check)
  return check?.outcomes.some(({ gives }) => gives.some((mark) => problem.marks.includes(mark))) ?? false
}

const soundWorth = (problem: PlanProblem): number =>
  provedExit(problem).payoffMinor[problem.suspects.findIndex(({ faults }) => faults.length === 0)]

/** The repair of most probability per cost, of those whose chance of a sale covers what they and their proof cost. */
const nextRepair = (at: Position): Repair | undefined => {
  const { problem } = at
  const gainMinor = soundWorth(problem) - bestExit(problem).minor
  const proof = proofOf({ ...problem, marks: [] }, provedExit(problem).needs) ?? []
  return untriedRepairs(at)
    .map((repair) => ({ repair, chance: chanceOfCure(problem, repair), minor: repairWork(problem, repair).minor }))
    .filter(({ chance, minor }) => chance * gainMinor > minor + proofMinor(problem, proof, problem.off))
    .sort((a, b) => b.chance / b.minor - a.chance / a.minor)
    .at(0)?.repair
}

const decide = (at: Position): Decision => {
  const { problem } = at
  const exit: Decision = { kind: 'exit', id: bestExit(problem).exit.id }
  const proof = proofOf(problem, provedExit(problem).needs)
  if (proof?.length === 0) return exit
  if (proof !== null && isProving(at)) return { kind: 'check', id: proof[0].check.id }
  const repair = nextRepair(at)
  return repair === undefined ? exit : { kind: 'repair', id: repair.id }
}

/** Repairs in the order of probability per cost, each proved, with no check but the proof's; stops when none is worth it. */
export const byProbabilityPerCost: Rival = { name: 'probability per cost, then prove', told: false, decide }
