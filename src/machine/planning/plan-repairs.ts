import type { Repair } from '../../blueprint/schema.ts'
import type { PlanProblem } from '../../engines/plan/index.ts'
import { breakageShare } from '../../facts/trade.ts'
import type { Job } from '../job.ts'
import type { MachineModel } from '../model.ts'
import { workingPriceOf } from '../prices.ts'
import { repairRenews, repairVoidsGate } from '../running.ts'
import { repairCostMinor } from '../shelf/repair-cost.ts'
import { gateMark, isGate, workingMark } from './plan-marks.ts'

/** A repair that is hardly needed is not planned for; it can be chosen all the same. */
const smallestNeed = 0.004

export const neededRepairs = (
  model: MachineModel,
  kept: readonly number[],
  shares: readonly number[],
): readonly Repair[] => {
  const chance = new Map<string, number>()
  kept.forEach((s, i) => {
    for (const f of model.sets[s]) {
      const { id } = model.blueprint.faults[f]
      chance.set(id, (chance.get(id) ?? 0) + shares[i])
    }
  })
  return model.blueprint.repairs.filter(
    (repair) => repair.removes.reduce((sum, id) => sum + (chance.get(id) ?? 0), 0) >= smallestNeed,
  )
}

/** Each way of doing a repair is a move of its own: `repair:option`. */
const repairMoveId = (repair: string, option: string): string => `${repair}:${option}`

/** The ways of doing a repair, as moves of the plan. */
export const planRepairs = (job: Job, repair: Repair): PlanProblem['repairs'] => {
  const { blueprint } = job
  const voided = blueprint.checks.filter((check) => isGate(check) && repairVoidsGate(blueprint, check, repair.id))
  const behind = blueprint.parts.find((part) => part.id === repair.part)?.behind
  const renews = blueprint.checks.filter((check) => repairRenews(blueprint, repair.id, check)).map((check) => check.id)
  return repair.options.map((option) => ({
    id: repairMoveId(repair.id, option.id),
    minutes: option.minutes,
    costMinor: repairCostMinor(job, repair, option),
    coversOff: [...new Set([...repair.coversOff, ...(behind === undefined ? [] : [behind])])],
    needs: [],
    removes: [...repair.removes],
    success: option.success,
    breakRisk: option.breakRisk,
    breakCostMinor: Math.round(breakageShare.value * workingPriceOf(job).minor),
    takes: [workingMark, ...voided.map((check) => gateMark(check.id))],
    renews,
    done: false,
  }))
}
