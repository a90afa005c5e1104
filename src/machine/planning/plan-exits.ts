import type { PlanProblem } from '../../engines/plan/index.ts'
import type { Job } from '../job.ts'
import type { MachineModel } from '../model.ts'
import { payoffs } from '../payoff.ts'
import { workingMark } from './plan-marks.ts'

/** The exits with what each brings under each suspect. */
export const planExits = (model: MachineModel, job: Job, kept: readonly number[]): PlanProblem['exits'] => {
  const rows = kept.map((s) => payoffs(job, model.sets[s]))
  return [
    { id: 'sell-working', payoffMinor: rows.map((row) => row.sellWorking), needs: [workingMark], allCoversOn: true },
    { id: 'sell-for-spares', payoffMinor: rows.map((row) => row.sellForSpares), needs: [], allCoversOn: true },
    { id: 'break-for-parts', payoffMinor: rows.map((row) => row.breakForParts), needs: [], allCoversOn: false },
    { id: 'scrap', payoffMinor: rows.map((row) => row.scrap), needs: [], allCoversOn: false },
  ]
}
