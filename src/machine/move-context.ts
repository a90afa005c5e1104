import type { PlanAnswer } from '../engines/plan/index.ts'
import type { Job } from './job.ts'
import type { MachineModel } from './model.ts'
import type { JobPlan } from './planning/plan-problem.ts'

/** What the words of a move are made from. */
export type MoveContext = {
  readonly model: MachineModel
  readonly job: Job
  readonly plan: JobPlan
  readonly answer: PlanAnswer
  readonly probability: Float64Array
  /** Suspects of one fault, by the chance that the fault is there, likeliest first. */
  readonly leading: readonly number[]
}
