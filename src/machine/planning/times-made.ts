import type { Check } from '../../blueprint/schema.ts'
import type { Job } from '../job.ts'
import type { MachineModel } from '../model.ts'
import { isFirstRun, passesGate, repairRenews, runsMachine } from '../running.ts'
import { isGate } from './plan-marks.ts'

/** A check that others wait for is made again until it tells: in the plan that costs a little more time and always tells. */
export const isRepeated = (check: Check): boolean => isGate(check) || (check.kind !== 'meter' && check.provesWorking)

/**
 * How often a check is made until a repair renews it: what says that the machine is sound or fit to run is made once more where
 * it failed by what a sound machine may show too, a poor touch of the probes or a scuff taken for a cut. Common practice of the
 * trade; that the second try errs independently of the first is a judgement.
 */
export const timesWorthMaking = (check: Check): number => (!isFirstRun(check) && isRepeated(check) ? 2 : 1)

/** Whether a check may be made once more after a result: it failed as a sound machine may, and trying again does no harm. */
export const mayFailWhenSound = (model: MachineModel, check: Check, outcome: string, passes: boolean): boolean => {
  if (check.kind === 'meter') return !passes
  const place = check.outcomes.findIndex(({ id }) => id === outcome)
  if (passes || place <= 0 || (runsMachine(check) && check.outcomes[place].danger)) return false
  return model.graded(check, soundSuspect(model))[place] > 0
}

const soundSuspect = (model: MachineModel): number => model.sets.findIndex((set) => set.length === 0)

/** How often each check has been made since the last repair that could have changed what it sees. */
export const timesMade = (model: MachineModel, job: Job): ReadonlyMap<string, number> => {
  const made = new Map<string, number>()
  for (const event of job.events) {
    if (event.kind === 'reading') {
      const check = job.blueprint.checks.find((c) => c.id === event.check)
      if (check === undefined || (event.result.kind === 'cannot-tell' && isRepeated(check))) continue
      const times = timesWorthMaking(check)
      const outcome = event.result.kind === 'grade' ? event.result.outcome : ''
      const again = mayFailWhenSound(model, check, outcome, passesGate(check, event.result) === true)
      made.set(event.check, again ? (made.get(event.check) ?? 0) + 1 : times)
    }
    if (event.kind !== 'repaired') continue
    for (const { id } of job.blueprint.checks.filter((check) => repairRenews(job.blueprint, event.repair, check)))
      made.delete(id)
  }
  return made
}
