import { exitCosts, sellThrough } from '../facts/trade.ts'
import { costsOfJob } from './costs.ts'
import { chancesOfSet } from './exit-chances.ts'
import { exitLines } from './exit-lines.ts'
import type { Job } from './job.ts'
import { totalOf } from './money-lines.ts'
import { partsWorthSelling } from './parts-for-sale.ts'
import type { ExitId } from './view.ts'

/** What leaving by each exit puts in hand under one suspect, in minor units, own time and materials taken off. */
export type Payoffs = {
  readonly sellWorking: number
  readonly sellForSpares: number
  readonly breakForParts: number
  readonly scrap: number
}

/** Payoffs of the exits for a machine with these faults left in it. */
export const payoffs = (job: Job, set: readonly number[]): Payoffs => {
  const chances = chancesOfSet(job.blueprint, costsOfJob(job).comebackShare, set)
  const payoff = (exit: ExitId): number => totalOf(exitLines(job, exit, chances))
  return {
    sellWorking: payoff('sell-working'),
    sellForSpares: payoff('sell-for-spares'),
    breakForParts: payoff('break-for-parts'),
    scrap: payoff('scrap'),
  }
}

const { cleanMin, photographMin, listMin, handOverMin } = exitCosts.sellWorking
const sellingMin = cleanMin + photographMin + listMin + handOverMin
const sparesMin = exitCosts.sellForSpares.listMin + exitCosts.sellForSpares.handOverMin

/** Own minutes that leaving by an exit still takes; already paid for in its payoff. Breaking: what of it sells is an expectation. */
export const exitWorkMin = (job: Job, exit: ExitId): number => {
  switch (exit) {
    case 'sell-working':
      return sellingMin
    case 'sell-for-spares':
      return sparesMin
    case 'scrap':
      return exitCosts.scrap.minutes
    case 'break-for-parts':
      return breakingMin(job)
  }
}

const breakingMin = (job: Job): number => {
  const { perPartStripMin, perListingMin, perSaleMin } = exitCosts.breakForParts
  const parts = partsWorthSelling(job)
  const selling = parts.reduce((sum, { price }) => sum + perListingMin + sellThrough(price.minor) * perSaleMin, 0)
  const openMin = job.blueprint.covers.reduce((sum, cover) => sum + cover.openMin, 0)
  return openMin + parts.length * perPartStripMin + selling
}
