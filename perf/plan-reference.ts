import { blueprintById } from '../src/blueprint/library.ts'
import type { PlanProblem } from '../src/engines/plan/index.ts'
import type { Complaint } from '../src/facts/complaints.ts'
import { machineModel, planProblem, suspectBelief } from '../src/machine/index.ts'
import { gapShare, timedPlan, timesTheWork } from './plan-budget.ts'
import { percent, tableLines, whole } from './table.ts'

/** The blueprint with most faults and checks under its three commonest complaints, and three others that do not run. */
const references: readonly (readonly [blueprint: string, complaint: Complaint])[] = [
  ['bagged-upright-two-motors', 'dead'],
  ['bagged-upright-two-motors', 'weak-suction'],
  ['bagged-upright-two-motors', 'intermittent'],
  ['electric-head-cylinder', 'dead'],
  ['bagged-cylinder', 'dead'],
  ['tub-by-pass', 'dead'],
]
/** Times the usual work. */
const budgets = [1, 10]

const head = ['', 'suspects', 'checks', 'repairs', 'work', 'ms', 'lower', 'upper', 'gap %']

/** Both bounds of the first plan of reference machines, the gap as a share of the lower one, and its time on one core when warm. */
export const run = (): readonly string[] => {
  const problems = references.map(([blueprint, complaint]) => ({
    name: `${blueprint}, ${complaint}`,
    problem: problemOf(blueprint, complaint),
  }))
  for (const { problem } of problems) timedPlan(problem, timesTheWork(1))
  return tableLines(
    head,
    problems.flatMap(({ name, problem }) => budgets.map((times) => row(name, problem, times))),
  )
}

const row = (name: string, problem: PlanProblem, times: number): readonly string[] => {
  const { answer, cpuMs } = timedPlan(problem, timesTheWork(times))
  const counts = [problem.suspects.length, problem.checks.length, problem.repairs.length].map(String)
  const figures = [cpuMs, answer.lowerMinor, answer.upperMinor].map(whole)
  return [name, ...counts, `${times} ×`, ...figures, percent(gapShare(answer))]
}

const problemOf = (id: string, complaint: Complaint): PlanProblem => {
  const blueprint = blueprintById(id)!
  const { plate } = blueprint
  const model = machineModel(blueprint, plate)
  const job = { blueprint, plate, complaints: [complaint], missing: [], events: [], off: [], hourMinor: 800 }
  return planProblem(model, job, suspectBelief(model, job).probability).problem
}
