import type { PlanAnswer } from '../engines/plan/index.ts'
import type { Job } from './job.ts'
import type { MachineModel } from './model.ts'
import type { JobPlan } from './plan-problem.ts'

/** What the words of a move are made from. */
export type MoveContext = {
  readonly model: MachineModel
  readonly job: Job
  readonly plan: JobPlan
  readonly answer: PlanAnswer
  readonly probability: Float64Array
  /** Indices of the leading suspects, likeliest first. */
  readonly leading: readonly number[]
}
