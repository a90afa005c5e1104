import { exitCosts, sellThrough } from '../facts/trade.ts'
import { costsOfJob, type CostFigures } from './costs.ts'
import type { Job } from './job.ts'
import { partPriceOf, type Price } from './prices.ts'

const ownTime = (minutes: number, hourMinor: number): number => (minutes * hourMinor) / 60

export type PartForSale = {
  readonly id: string
  readonly name: string
  readonly price: Price
  /** What listing it nets on average, minor units. */
  readonly netMinor: number
}

/** Parts with what each nets, best first; those that are not worth their minutes left out. Minor units. */
export const partsWorthSelling = (job: Job): readonly PartForSale[] =>
  job.blueprint.parts
    .filter((part) => !job.missing.includes(part.id))
    .flatMap((part) => {
      const price = partPriceOf(job, part)
      return price === null
        ? []
        : [{ id: part.id, name: part.name, price, netMinor: partNet(price.minor, job.hourMinor, costsOfJob(job)) }]
    })
    .filter(({ netMinor }) => netMinor > 0)
    .toSorted((a, b) => b.netMinor - a.netMinor)

/** What listing a part at a price nets on average, fee, postage and own minutes taken off; minor units, may be below nothing. */
export const partNet = (
  priceMinor: number,
  hourMinor: number,
  { partFeeShare, postageMinor }: Pick<CostFigures, 'partFeeShare' | 'postageMinor'>,
): number => {
  if (priceMinor <= 0) return 0
  const { perSaleMin, perListingMin } = exitCosts.breakForParts
  const net = priceMinor * (1 - partFeeShare) - postageMinor - ownTime(perSaleMin, hourMinor)
  return sellThrough(priceMinor) * net - ownTime(perListingMin, hourMinor)
}

/** The parts that are not there and what each would cost to find as a spare, minor units. */
export const missingParts = (job: Job): readonly { readonly name: string; readonly price: Price }[] =>
  job.blueprint.parts
    .filter((part) => job.missing.includes(part.id))
    .flatMap((part) => {
      const price = partPriceOf(job, part)
      return price === null ? [] : [{ name: part.name, price }]
    })
