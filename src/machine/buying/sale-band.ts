import type { Blueprint } from '../../blueprint/schema.ts'
import { logNormalMean, logNormalOfBand, type LogNormal } from '../../engines/money/index.ts'
import { conditionShares, type Condition } from '../../facts/buying.ts'
import type { SetPrices } from '../set-prices.ts'

/** What the machine sells for, mended and cleaned: a log-normal price, its mean what the plan reckons with. Minor units. */
export type SaleBand = {
  readonly price: LogNormal
  readonly meanMinor: number
  /** As it stands, for spares or repair. */
  readonly sparesMinor: number
  readonly from: 'blueprint' | 'market'
  readonly conditionShare: number
}

export type Market = { readonly lowMinor: number; readonly medianMinor: number; readonly highMinor: number }

/**
 * The price of the machine in its condition. From a market, its median and its 90 % band; from the blueprint, the width of its
 * range about a mean in the middle of it, which is what the machine's own page reckons with.
 */
export const saleBand = ({ worth }: Blueprint, condition: Condition, market?: Market): SaleBand => {
  const { share } = conditionShares[condition]
  const middle = (worth.workingMinor.low + worth.workingMinor.high) / 2
  const [low, high] =
    market === undefined ? [worth.workingMinor.low, worth.workingMinor.high] : [market.lowMinor, market.highMinor]
  const sdLog = low > 0 && high > low ? logNormalOfBand(low, high).sdLog : 0
  const meanOf = (median: number): number => logNormalMean({ median, sdLog })
  const mean = market === undefined ? middle * share : Math.round(meanOf(market.medianMinor) * share)
  return {
    price: { median: mean / meanOf(1), sdLog },
    meanMinor: mean,
    sparesMinor: ((worth.sparesMinor.low + worth.sparesMinor.high) / 2) * share,
    from: market === undefined ? 'blueprint' : 'market',
    conditionShare: share,
  }
}

/** Prices as somebody sets them; when, nobody asks of an advert. */
const unsaid = '1970-01-01T00:00:00Z'

/** The prices of a market as the job has them set; the blueprint's need no setting. */
export const plannedPrices = ({ meanMinor, sparesMinor }: SaleBand): SetPrices => ({
  working: { minor: meanMinor, at: unsaid },
  spares: { minor: sparesMinor, at: unsaid },
  parts: {},
})
