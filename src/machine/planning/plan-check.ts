import type { Check, GradedCheck } from '../../blueprint/schema.ts'
import type { PlanProblem } from '../../engines/plan/index.ts'
import { checkOverheadMin } from '../../facts/trade.ts'
import type { Band } from '../bands.ts'
import type { Job } from '../job.ts'
import type { MachineModel } from '../model.ts'
import { passesGate, runsMachine } from '../running.ts'
import { coversFor } from './covers-for.ts'
import { meterOutcomes } from './meter-outcomes.ts'
import { gives, marksNeeded, takes, workingMark } from './plan-marks.ts'
import { isRepeated, mayFailWhenSound, timesWorthMaking } from './times-made.ts'
import { withCannotTell } from './with-cannot-tell.ts'

type PlanCheck = PlanProblem['checks'][number]

/** A check as a move of the plan. `bands` is filled in with those of a meter check; `made`: how often it has been made already. */
export const planCheck = (
  model: MachineModel,
  job: Job,
  check: Check,
  kept: readonly number[],
  shares: readonly number[],
  bands: Map<string, readonly Band[]>,
  made: number,
): PlanCheck => {
  const common = {
    id: check.id,
    minutes: (check.minutes + checkOverheadMin.value) / (1 - (isRepeated(check) ? check.cannotTell : 0)),
    costMinor: check.costMinor,
    coversOff: coversFor(model.blueprint, check),
    allCoversOn: (runsMachine(check) || check.coversOn) && check.coversOff.length === 0,
    needs: marksNeeded(job, check),
    done: false,
    renewedByRepair: true,
    times: timesWorthMaking(check),
    made,
  }
  return check.kind === 'meter'
    ? { ...common, ...meterOutcomes(model, check, kept, shares, bands) }
    : { ...common, ...gradedOutcomes(model, check, kept) }
}

const gradedOutcomes = (
  model: MachineModel,
  check: GradedCheck,
  kept: readonly number[],
): Pick<PlanCheck, 'outcomes' | 'likelihood'> => {
  const outcomes = check.outcomes.map((outcome, i) => {
    const passes = passesGate(check, { kind: 'grade', outcome: outcome.id }) === true
    return {
      id: outcome.id,
      gives: [...gives(check, passes, outcome.danger), ...(check.provesWorking && i === 0 ? [workingMark] : [])],
      takes: [...takes(check, passes, outcome.danger), ...(check.provesWorking && i > 0 ? [workingMark] : [])],
      again: mayFailWhenSound(model, check, outcome.id, passes),
    }
  })
  return {
    outcomes: [...outcomes, { id: 'cannot-tell', gives: [], takes: [], again: true }],
    likelihood: kept.map((s) => withCannotTell(check, [...model.graded(check, s)])),
  }
}
