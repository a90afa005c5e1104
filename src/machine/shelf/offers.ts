import type { Blueprint } from '../../blueprint/schema.ts'
import type { PartKind } from '../../facts/part-kinds.ts'
import { costsOfJob } from '../costs.ts'
import type { Job } from '../job.ts'
import { partNet } from '../parts-for-sale.ts'
import { partPriceOf } from '../prices.ts'
import { partFit } from './fits.ts'
import type { ShelfOffer, ShelfPart } from './shelf-offer.ts'
import type { PartFit, Spare, SpareWanted } from './spare.ts'

type Priced = Pick<Job, 'blueprint' | 'hourMinor' | 'costs' | 'prices'>

/** What the shelf holds for the parts that this machine's repairs put in, by part; of each the best first. */
export const shelfOffers = (job: Priced, wanted: SpareWanted, shelf: readonly ShelfPart[]): readonly ShelfOffer[] =>
  replaceable(job.blueprint).flatMap((part) =>
    shelf
      .flatMap((spare) => {
        const fit = partFit(wanted, part, spare)
        return fit === null || fit.kind === 'does-not-fit' ? [] : [offerOf(job, part, spare, fit)]
      })
      .toSorted(betterFirst),
  )

/** Parts that a repair puts another one in for. */
const replaceable = ({ repairs }: Blueprint): readonly string[] => [
  ...new Set(
    repairs
      .filter(({ options }) => options.some(({ id }) => id === 'salvaged' || id === 'new'))
      .map(({ part }) => part),
  ),
]

const offerOf = (job: Priced, part: string, spare: ShelfPart, fit: PartFit): ShelfOffer => {
  const { id, name, partKind, place, condition, costMinor } = spare
  const own = job.blueprint.parts.find((one) => one.id === part)
  const usual = own === undefined ? null : partPriceOf(job, own)
  const fetchesMinor = spare.fetchesMinor ?? Math.round(usual?.minor ?? 0)
  const worthMinor = Math.max(0, Math.round(partNet(fetchesMinor, job.hourMinor, costsOfJob(job))))
  return { id, name, partKind, part, place, condition, fit, costMinor, fetchesMinor, worthMinor }
}

/** What fits before what may; then what was tested; then what would bring least if it were sold. */
const betterFirst = (a: ShelfOffer, b: ShelfOffer): number =>
  Number(b.fit.kind === 'fits') - Number(a.fit.kind === 'fits') ||
  conditions.indexOf(a.condition) - conditions.indexOf(b.condition) ||
  a.worthMinor - b.worthMinor

const conditions: readonly Spare['condition'][] = ['tested', 'looks-sound', 'untested', 'worn']

/** Kinds that the plan reckons with only when nothing of them is unknown. */
const onlyCertain: readonly PartKind[] = ['flex', 'fuse', 'plug', 'reel', 'other']

/**
 * The part of the shelf that the plan reckons with for a repair: one that fits, or one that may and of which something was
 * compared and agrees. Null where there is none, or where finding another one costs less than this one would bring.
 * @param foundMinor what finding one costs, minor units
 */
export const plannedOffer = ({ shelf = [] }: Pick<Job, 'shelf'>, part: string, foundMinor: number): ShelfOffer | null =>
  shelf.find(
    (offer) =>
      offer.part === part &&
      offer.condition !== 'worn' &&
      offer.worthMinor <= foundMinor &&
      (offer.fit.kind === 'fits' || (offer.fit.agrees.length > 0 && !onlyCertain.includes(offer.partKind))),
  ) ?? null
