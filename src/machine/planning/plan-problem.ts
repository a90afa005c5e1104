import type { PlanProblem } from '../../engines/plan/index.ts'
import type { Band } from '../bands.ts'
import type { Job } from '../job.ts'
import type { MachineModel } from '../model.ts'
import { keptSuspects } from './kept-suspects.ts'
import { planCheck } from './plan-check.ts'
import { planExits } from './plan-exits.ts'
import { marksHeld } from './plan-marks.ts'
import { neededRepairs, planRepairs } from './plan-repairs.ts'
import { timesMade } from './times-made.ts'

/** The planning problem of a job, with what is needed to read its answer back. */
export type JobPlan = {
  readonly problem: PlanProblem
  /** Suspects of the problem, as indices into the model's sets. */
  readonly kept: readonly number[]
  readonly bands: ReadonlyMap<string, readonly Band[]>
}

/** Puts a job to the planner: suspects, checks, repairs, covers and exits, in money. The rules of running are marks. */
export const planProblem = (model: MachineModel, job: Job, probability: Float64Array): JobPlan => {
  const { kept, shares } = keptSuspects(model, probability)
  const bands = new Map<string, readonly Band[]>()
  const { blueprint } = model
  const made = timesMade(model, job)
  const problem: PlanProblem = {
    format: 'thrum-plan-1',
    hourMinor: job.hourMinor,
    faults: blueprint.faults.map((fault) => fault.id),
    suspects: kept.map((s, i) => ({
      id: `s${s}`,
      faults: model.sets[s].map((f) => blueprint.faults[f].id),
      probability: shares[i],
    })),
    covers: blueprint.covers.map(({ id, openMin, closeMin, after }) => ({ id, openMin, closeMin, after })),
    off: [...job.off],
    marks: marksHeld(job),
    checks: blueprint.checks.map((check) => planCheck(model, job, check, kept, shares, bands, made.get(check.id) ?? 0)),
    repairs: neededRepairs(model, kept, shares).flatMap((repair) => planRepairs(job, repair)),
    exits: planExits(model, job, kept),
  }
  return { problem, kept, bands }
}
