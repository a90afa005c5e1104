import type { Blueprint } from '../blueprint/schema.ts'
import { logNormalMean, logNormalOfBand } from '../engines/money/index.ts'
import { conditionShares } from '../facts/buying.ts'
import type { Job } from './job.ts'
import type { MarketPrice } from './market.ts'
import type { SetPrice } from './set-prices.ts'

/**
 * A price that the plan reckons with, minor units. `setAt`: when somebody set it, ISO 8601; null for the blueprint's own and for
 * one from the market, which then stands beside it.
 */
export type Price = { readonly minor: number; readonly setAt: string | null; readonly market?: MarketPrice }

type Range = { readonly low: number; readonly high: number }
const middle = ({ low, high }: Range): number => (low + high) / 2

const priceOf = (set: SetPrice | null | undefined, range: Range, share = 1): Price =>
  set === null || set === undefined
    ? { minor: middle(range) * share, setAt: null }
    : { minor: set.minor, setAt: set.at }

/** What its looks leave of the blueprint's prices; a price that somebody set is of the machine as it is. */
export const conditionShareOf = ({ condition = 'good' }: Pick<Job, 'condition'>): number =>
  conditionShares[condition].share

/** Cleaned and working: as set; else what comparable sales say, on average; else the middle of the blueprint's range. The last two less what its looks take off. */
export const workingPriceOf = (job: Pick<Job, 'blueprint' | 'prices' | 'condition' | 'market'>): Price => {
  const { market } = job
  if (market === undefined || market === null || (job.prices?.working ?? null) !== null)
    return priceOf(job.prices?.working, job.blueprint.worth.workingMinor, conditionShareOf(job))
  return { minor: Math.round(marketMean(market) * conditionShareOf(job)), setAt: null, market }
}

/** What a sale brings on average: the plan weighs money by its mean, as it does before buying. */
const marketMean = ({ lowMinor, medianMinor, highMinor }: MarketPrice): number =>
  logNormalMean({ median: medianMinor, sdLog: highMinor > lowMinor ? logNormalOfBand(lowMinor, highMinor).sdLog : 0 })

/** As it stands, for spares or repair. */
export const sparesPriceOf = (job: Job): Price =>
  priceOf(job.prices?.spares, job.blueprint.worth.sparesMinor, conditionShareOf(job))

/** One part on its own; null when it fetches nothing by the blueprint and nobody set a price. */
export const partPriceOf = ({ prices }: Pick<Job, 'prices'>, part: Blueprint['parts'][number]): Price | null => {
  const set = prices?.parts[part.id]
  return set === undefined && part.spareMinor === undefined
    ? null
    : priceOf(set, part.spareMinor ?? { low: 0, high: 0 })
}

/** The prices that the plan reckons with, as they are shown. */
export type ReckonedPrices = {
  readonly working: Price
  readonly spares: Price
  readonly parts: readonly { readonly id: string; readonly name: string; readonly price: Price }[]
}

/** All prices that the plan reckons with; parts that are not there or fetch nothing are left out. */
export const reckonedPrices = (job: Job): ReckonedPrices => ({
  working: workingPriceOf(job),
  spares: sparesPriceOf(job),
  parts: job.blueprint.parts.flatMap((part) => {
    const price = job.missing.includes(part.id) ? null : partPriceOf(job, part)
    return price === null ? [] : [{ id: part.id, name: part.name, price }]
  }),
})
