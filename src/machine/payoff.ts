import type { Blueprint } from '../blueprint/schema.ts'
import { comebackMin, comebackShare, exitCosts, sellThrough } from '../facts/trade.ts'
import type { Job } from './job.ts'
import type { ExitId } from './view.ts'

const middle = (range: { readonly low: number; readonly high: number }): number => (range.low + range.high) / 2
const ownTime = (minutes: number, hourMinor: number): number => (minutes * hourMinor) / 60

/** What leaving by each exit puts in hand under one suspect, in minor units, own time and materials taken off. */
export type Payoffs = {
  readonly sellWorking: number
  readonly sellForSpares: number
  readonly breakForParts: number
  readonly scrap: number
}

/** Payoffs of the exits for a machine with these faults left in it. */
export const payoffs = (job: Job, set: readonly number[]): Payoffs => ({
  sellWorking: sellWorking(job, set),
  sellForSpares: sellForSpares(job),
  breakForParts: breakForParts(job, set),
  scrap: -ownTime(exitCosts.scrap.minutes, job.hourMinor),
})

/** What the missing parts would cost to find as spares. */
const missingMinor = (job: Job): number =>
  job.blueprint.parts
    .filter((part) => job.missing.includes(part.id))
    .reduce((sum, part) => sum + middle(part.spareMinor ?? none), 0)

const none = { low: 0, high: 0 }

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
  const selling = parts.reduce((sum, { priceMinor }) => sum + perListingMin + sellThrough(priceMinor) * perSaleMin, 0)
  return openingMin(job) + parts.length * perPartStripMin + selling
}

const openingMin = (job: Job): number => job.blueprint.covers.reduce((sum, cover) => sum + cover.openMin, 0)

const sellWorking = (job: Job, set: readonly number[]): number => {
  const { materialsMinor } = exitCosts.sellWorking
  const price = Math.max(0, middle(job.blueprint.worth.workingMinor) - missingMinor(job))
  const share = set.reduce((product, index) => product * (job.blueprint.faults[index]?.saleShareIfLeft ?? 0), 1)
  const comesBack = comebackShare.value + (1 - comebackShare.value) * (1 - share)
  const returned = comesBack * (price + ownTime(comebackMin.value, job.hourMinor))
  // What comes back is still worth its price for spares.
  const left = comesBack * middle(job.blueprint.worth.sparesMinor)
  return price - returned + left - materialsMinor - ownTime(sellingMin, job.hourMinor)
}

const sellForSpares = (job: Job): number => {
  const share = 1 - Math.min(1, missingMinor(job) / Math.max(1, middle(job.blueprint.worth.workingMinor)))
  return middle(job.blueprint.worth.sparesMinor) * share - ownTime(sparesMin, job.hourMinor)
}

/** Parts with a fault, and the spares they are sold with. */
const unsoundParts = (blueprint: Blueprint, set: readonly number[]): ReadonlySet<string | undefined> => {
  const faulty = set.map((index) => blueprint.faults[index]?.part)
  return new Set([...faulty, ...blueprint.parts.filter(({ id }) => faulty.includes(id)).map(({ within }) => within)])
}

/** Parts that are sound and worth their minutes, sold at the trade's sell-through; taking the whole machine apart is paid for. */
const breakForParts = (job: Job, set: readonly number[]): number => {
  const faulty = unsoundParts(job.blueprint, set)
  const sellable = partsWorthSelling(job).filter(({ id }) => !faulty.has(id))
  const strip = openingMin(job) + sellable.length * exitCosts.breakForParts.perPartStripMin
  return sellable.reduce((sum, { netMinor }) => sum + netMinor, 0) - ownTime(strip, job.hourMinor)
}

type PartForSale = { readonly id: string; readonly priceMinor: number; readonly netMinor: number }

/** Parts with what each nets, best first; those that are not worth their minutes left out. Minor units. */
export const partsWorthSelling = (job: Job): readonly PartForSale[] =>
  job.blueprint.parts
    .filter((part) => part.spareMinor !== undefined && !job.missing.includes(part.id))
    .map((part) => ({ id: part.id, priceMinor: middle(part.spareMinor ?? none) }))
    .map((part) => ({ ...part, netMinor: partNet(part.priceMinor, job.hourMinor) }))
    .filter(({ netMinor }) => netMinor > 0)
    .toSorted((a, b) => b.netMinor - a.netMinor)

/** What listing a part at a price nets on average, minor units; may be below nothing. */
export const partNet = (priceMinor: number, hourMinor: number): number => {
  if (priceMinor <= 0) return 0
  const { perSaleMin, perListingMin, feeShare } = exitCosts.breakForParts
  const net = priceMinor * (1 - feeShare) - ownTime(perSaleMin, hourMinor)
  return sellThrough(priceMinor) * net - ownTime(perListingMin, hourMinor)
}

/** Price of a working machine of this blueprint, minor units. */
export const workingPrice = (blueprint: Blueprint): number => middle(blueprint.worth.workingMinor)
