import type { Blueprint, Cover } from '../../blueprint/schema.ts'
import { exitCosts, sellThrough } from '../../facts/trade.ts'
import { costsOfJob } from '../costs.ts'
import type { ExitChances } from '../exit-chances.ts'
import type { Job } from '../job.ts'
import { partsWorthSelling } from '../parts-for-sale.ts'
import { partPriceOf } from '../prices.ts'

/** One part and what taking it off and selling it brings on average. Money in minor units, minutes of one's own. */
export type StripLine = {
  readonly part: string
  readonly name: string
  readonly priceMinor: number
  /** Probability that it is sound, and that a sound one sells. */
  readonly soundChance: number
  readonly sellChance: number
  /** Price × sound × sells, less fee and postage. */
  readonly bringsMinor: number
  /** Its share of the covers, taking it out, listing, packing and posting. */
  readonly minutes: number
  /** What it brings, its minutes paid for. */
  readonly netMinor: number
  /** Money per minute before the minutes are paid for. */
  readonly perMinuteMinor: number
  /** The plan reckons with selling it. */
  readonly isWorthIt: boolean
}

export type StripList = {
  /** Those worth it first, then the others; each by what a minute brings. */
  readonly lines: readonly StripLine[]
  /** Minutes of covers that none of the parts worth it is behind; the plan opens all. */
  readonly otherCoversMin: number
  /** What breaking for parts is worth by the plan: those worth it together, less the time of the other covers. */
  readonly totalMinor: number
}

/**
 * What to take off a machine that is broken for parts. Minutes of a cover are shared evenly by the parts worth selling behind
 * it, so that none is counted twice; a part that is not worth it bears the covers it needs beyond those.
 * @param chances how likely each part is sound, by what is believed now
 */
export const stripList = (job: Job, chances: Pick<ExitChances, 'sound'>): StripList => {
  const worthIt = partsWorthSelling(job).map(({ id }) => id)
  const sharers = sharersOf(job.blueprint, worthIt)
  const lines = job.blueprint.parts
    .filter(({ id }) => !job.missing.includes(id))
    .flatMap((part) => {
      const price = partPriceOf(job, part)
      if (price === null) return []
      const isWorthIt = worthIt.includes(part.id)
      const coversMin = coverShareMin(job.blueprint, part, isWorthIt, sharers)
      return [lineOf(job, part, price.minor, chances.sound(part.id), coversMin, isWorthIt)]
    })
    .toSorted((a, b) => Number(b.isWorthIt) - Number(a.isWorthIt) || b.perMinuteMinor - a.perMinuteMinor)
  const otherCoversMin = job.blueprint.covers
    .filter(({ id }) => (sharers.get(id) ?? 0) === 0)
    .reduce((sum, { openMin }) => sum + openMin, 0)
  const netMinor = lines.reduce((sum, line) => sum + (line.isWorthIt ? line.netMinor : 0), 0)
  return { lines, otherCoversMin, totalMinor: netMinor - (otherCoversMin * job.hourMinor) / 60 }
}

type Part = Blueprint['parts'][number]

const lineOf = (
  job: Job,
  { id, name }: Part,
  priceMinor: number,
  soundChance: number,
  coversMin: number,
  isWorthIt: boolean,
): StripLine => {
  const { perPartStripMin, perListingMin, perSaleMin } = exitCosts.breakForParts
  const { partFeeShare, postageMinor } = costsOfJob(job)
  const sellChance = sellThrough(priceMinor)
  const sold = soundChance * sellChance
  const bringsMinor = sold * (priceMinor * (1 - partFeeShare) - postageMinor)
  const minutes = coversMin + soundChance * (perPartStripMin + perListingMin) + sold * perSaleMin
  return {
    part: id,
    name,
    priceMinor,
    soundChance,
    sellChance,
    bringsMinor,
    minutes,
    netMinor: bringsMinor - (minutes * job.hourMinor) / 60,
    perMinuteMinor: minutes > 0 ? bringsMinor / minutes : bringsMinor,
    isWorthIt,
  }
}

/** A cover and all that must come off before it. */
const coversTo = (blueprint: Pick<Blueprint, 'covers'>, id: string | undefined): readonly Cover[] => {
  const cover = blueprint.covers.find((one) => one.id === id)
  if (cover === undefined) return []
  const before = cover.after.flatMap((other) => coversTo(blueprint, other))
  return [...new Set([...before, cover])]
}

/** Of each cover, how many parts worth it are behind it. */
const sharersOf = (blueprint: Blueprint, worthIt: readonly string[]): ReadonlyMap<string, number> => {
  const count = new Map<string, number>()
  for (const { id, behind } of blueprint.parts) {
    if (!worthIt.includes(id)) continue
    for (const cover of coversTo(blueprint, behind)) count.set(cover.id, (count.get(cover.id) ?? 0) + 1)
  }
  return count
}

const coverShareMin = (
  blueprint: Blueprint,
  { behind }: Part,
  isWorthIt: boolean,
  sharers: ReadonlyMap<string, number>,
): number =>
  coversTo(blueprint, behind).reduce((sum, { id, openMin }) => {
    const others = sharers.get(id) ?? 0
    if (isWorthIt) return sum + openMin / others
    return others > 0 ? sum : sum + openMin
  }, 0)
