import type { Source } from '../base/source.ts'

const trade = (clause: string): Source => ({
  title: 'Order of work and prices of a small bench, UK street level 2024–26',
  clause,
  evidence: 'judgement',
})

/** What leaving by each exit costs in own minutes and materials (minor units), before the value of time. */
export const exitCosts = {
  /** Clean, photograph, list, hand over; new bag and filters. */
  sellWorking: {
    cleanMin: 60,
    photographMin: 15,
    listMin: 15,
    handOverMin: 15,
    materialsMinor: 800,
    source: trade('minutes by stage; filters and bag'),
  },
  /** A plain advert and handing over. */
  sellForSpares: { listMin: 10, handOverMin: 10, source: trade('minutes by stage') },
  /** Per part that is sold, per part that is listed; the fee of selling by post. */
  breakForParts: {
    perSaleMin: 14,
    perListingMin: 6,
    perPartStripMin: 2,
    feeShare: 0.1,
    source: trade('break for spares, two worked cases'),
  },
  scrap: { minutes: 10, source: trade('taking it to the tip') },
} as const

/**
 * Share of listed parts of this price that sell within ninety days, 0.33 to 0.66: cheap parts are slow. Judgement; a line in
 * the logarithm of the price that gives back the two worked cases of the trade figures, parts of £5 to £10 and of £6 to £45.
 */
export const sellThrough = (priceMinor: number): number =>
  Math.min(0.66, Math.max(0.33, 0.33 + (0.33 * Math.log(priceMinor / 500)) / Math.log(6)))

/** Where {@link sellThrough} comes from. */
export const partSaleSource = trade('share of parts that sell, two worked cases')

/** Share of the working price set aside for machines that come back. */
export const comebackShare = { value: 0.06, source: trade('comebacks') }
/** What a buyer's return costs beyond the price, in own minutes. */
export const comebackMin = { value: 60, source: trade('comebacks') }
/** What breaking something on the way to a repair costs, as a share of the working price. */
export const breakageShare = { value: 0.15, source: trade('break risk: damage made while reaching a part') }

/** What every check takes besides its own minutes: fetching, settling, writing down. */
export const checkOverheadMin = { value: 1, source: trade('time between the steps of a diagnosis') }
