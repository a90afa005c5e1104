import { blueprintById } from '../src/blueprint/library.ts'
import { plan } from '../src/engines/plan/index.ts'
import { advertSchema, buyingView, quickEffort } from '../src/machine/buying/index.ts'
import { defaultCosts } from '../src/machine/costs.ts'
import { machineModel, planProblem, suspectBelief } from '../src/machine/index.ts'
import type { Job } from '../src/machine/job.ts'
import { medianMs } from './median.ts'

const times = 7

/** A whole buying view of the dead two-motor upright, quick and in full, each beside one plan on the same job at the usual effort. */
export const run = (): { name: string; ours: number; theirs: number; ratio: number }[] => {
  const blueprint = blueprintById('bagged-upright-two-motors')!
  const costs = defaultCosts('UK')
  const job: Job = { blueprint, plate: blueprint.plate, complaints: ['dead'], missing: [], events: [], off: [], hourMinor: 800, costs } // prettier-ignore
  const model = machineModel(blueprint, blueprint.plate)
  const { problem } = planProblem(model, job, suspectBelief(model, job).probability)
  const advert = advertSchema.parse({ blueprint: blueprint.id, complaints: ['dead'], askingMinor: 1500, distanceKm: 8 })
  const onePlan = medianMs(() => plan(problem, { withPolicy: false }), times)
  return [
    ['quick', quickEffort],
    ['in full', 1],
  ].map(([how, effort]) => {
    const ours = medianMs(() => buyingView(advert, { blueprint, hourMinor: 800, costs, attitude: 'average', effort: Number(effort) }), times) // prettier-ignore
    const name = `buying view of ${blueprint.id}, dead, ${how}, against one plan`
    return { name, ours, theirs: onePlan, ratio: onePlan / ours }
  })
}
