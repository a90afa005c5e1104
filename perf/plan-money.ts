import { blueprints } from '../src/blueprint/library.ts'
import { hiddenTruth, machineModel, machineView, playMove, truthNow } from '../src/machine/index.ts'
import type { Job } from '../src/machine/job.ts'
import { payoffs } from '../src/machine/payoff.ts'

const machines = 20
const mostMoves = 60
/** The blueprint with most faults and checks. */
const deepest = 'bagged-upright-two-motors'

/** What one virtual machine really brings when the plan is followed to the end: payoff under the truth, own time and parts paid for. */
const playedMinor = (job: Job, seed: number): { readonly moneyMinor: number; readonly boundMinor: number } => {
  const model = machineModel(job.blueprint, job.plate)
  const boundMinor = machineView(job).worth.upperMinor
  let now = job
  let spentMinor = 0
  for (let move = 0; move < mostMoves; move++) {
    const { next } = machineView(now)
    if (next.kind === 'exit') {
      const paid = payoffs(now, model.sets[truthNow(model, now, seed)])
      const key = {
        'sell-working': paid.sellWorking,
        'sell-for-spares': paid.sellForSpares,
        'break-for-parts': paid.breakForParts,
        scrap: paid.scrap,
      }
      return { moneyMinor: key[next.exit] - spentMinor - (next.minutes * job.hourMinor) / 60, boundMinor }
    }
    spentMinor += next.costMinor + (next.minutes * job.hourMinor) / 60
    now = playMove(now, next, seed)
  }
  return { moneyMinor: -spentMinor, boundMinor }
}

/** Mean money of following the plan, beside breaking each machine at once, and beside the mean proved upper bound. In minor units. */
export const run = (): { name: string; ours: number; theirs: number; ratio: number }[] =>
  blueprints
    .filter(({ id }) => id === deepest)
    .flatMap((blueprint) => {
      const model = machineModel(blueprint, blueprint.plate)
      const seeds = Array.from({ length: machines }, (_, i) => 1001 + i)
      const jobs = seeds.map((seed): Job => ({
        blueprint,
        plate: blueprint.plate,
        complaints: hiddenTruth(model, seed).complaints,
        missing: [],
        events: [],
        off: [],
        hourMinor: 800,
      }))
      const mean = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length
      const played = jobs.map((job, i) => playedMinor(job, seeds[i]))
      const plan = mean(played.map(({ moneyMinor }) => moneyMinor))
      const broken = mean(
        jobs.map((job, i) => payoffs(job, model.sets[hiddenTruth(model, seeds[i]).suspect]).breakForParts),
      )
      const bound = mean(played.map(({ boundMinor }) => boundMinor))
      const of = `${machines} virtual machines of ${blueprint.id}, mean money in pence, plan`
      return [
        { name: `${of} against breaking at once`, ours: plan, theirs: broken, ratio: plan / broken },
        { name: `${of} against the proved upper bound`, ours: plan, theirs: bound, ratio: plan / bound },
      ]
    })
