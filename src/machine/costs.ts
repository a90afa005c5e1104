import type { Currency } from '../base/money.ts'
import type { Source } from '../base/source.ts'
import { costFactIn, costNames, regionCurrency, type CostFact, type CostName } from '../facts/trade-costs.ts'
import type { Region } from '../facts/regions.ts'
import type { Ground } from './money-lines.ts'

/** What things cost. Money in minor units, minutes of one's own time, shares 0 to 1. */
export type CostFigures = {
  /** What driving a kilometre costs, minor units; a rate, so not always whole. */
  readonly perKmMinor: number
  readonly minutesPerKm: number
  /** Minutes of fetching a machine besides driving. */
  readonly collectMin: number
  /** Bag, filters, cleaning stuff of a machine sold working. */
  readonly materialsMinor: number
  /** Share of the price that selling a machine costs; 0 for a local sale. */
  readonly saleFeeShare: number
  /** Share of the price that selling a part by post costs. */
  readonly partFeeShare: number
  /** Postage the seller pays per part sold; 0 where the buyer pays. */
  readonly postageMinor: number
  /** Share of sound machines sold working that come back. */
  readonly comebackShare: number
  /** What a buyer's return costs beyond the price. */
  readonly comebackMin: number
}

/** The figures, and of each where it comes from: a source, or `set` where the bench's settings say so. */
export type Costs = CostFigures & { readonly from: Readonly<Record<CostName, Source | 'set'>> }

/** Some of the figures, as set. */
export type CostsSet = Partial<CostFigures>

/**
 * What things cost in a region until something is set. Minutes and shares are the region's; amounts are those of the region
 * whose money the currency is, so that no figure is read in a currency it was not meant in.
 */
export const defaultCosts = (region: Region, currency: Currency = regionCurrency[region]): Costs => {
  const fact = (name: CostName): CostFact => costFactIn(region, currency, name)
  return {
    perKmMinor: fact('perKmMinor').value,
    minutesPerKm: fact('minutesPerKm').value,
    collectMin: fact('collectMin').value,
    materialsMinor: fact('materialsMinor').value,
    saleFeeShare: fact('saleFeeShare').value,
    partFeeShare: fact('partFeeShare').value,
    postageMinor: fact('postageMinor').value,
    comebackShare: fact('comebackShare').value,
    comebackMin: fact('comebackMin').value,
    from: Object.fromEntries(costNames.map((name) => [name, fact(name).source])) as Record<CostName, Source>,
  }
}

/** The costs with some of them set; what is left out or undefined stays. */
export const withCosts = (costs: Costs, set: CostsSet): Costs => {
  const names = costNames.filter((name) => set[name] !== undefined)
  const figures = Object.fromEntries(names.map((name) => [name, set[name]]))
  const from = Object.fromEntries(names.map((name) => [name, 'set' as const]))
  return { ...costs, ...figures, from: { ...costs.from, ...from } }
}

const ukCosts = defaultCosts('UK')

/** What things cost for a machine in hand. */
export const costsOfJob = ({ costs }: { readonly costs?: Costs }): Costs => costs ?? ukCosts

/** What a line that rests on a cost is grounded on. */
export const costGround = (job: { readonly costs?: Costs }, name: CostName): Ground => {
  const from = costsOfJob(job).from[name]
  return from === 'set' ? { kind: 'cost-set' } : from
}
