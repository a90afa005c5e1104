import { plan, type PlanAnswer, type PlanOptions, type PlanProblem } from '../src/engines/plan/index.ts'

/** The default of `steps`, as docs/plan-engine.md gives it. */
const defaultSteps = 4000

/** Options that let the plan do so many times its usual work. */
export const timesTheWork = (times: number): PlanOptions => ({ steps: Math.round(defaultSteps * times), effort: times })

export type Timed = { readonly answer: PlanAnswer; readonly cpuMs: number }

/** A plan with the processor time it took, in milliseconds: what else the machine is doing does not count. */
export const timedPlan = (problem: PlanProblem, options: PlanOptions): Timed => {
  const before = process.cpuUsage()
  const answer = plan(problem, options)
  const { user, system } = process.cpuUsage(before)
  return { answer, cpuMs: (user + system) / 1000 }
}

/** How far the upper value lies above the lower one, as a share of the lower one. */
export const gapShare = ({ lowerMinor, upperMinor }: PlanAnswer): number =>
  (upperMinor - lowerMinor) / Math.abs(lowerMinor)
