import type { Repair } from '../../blueprint/schema.ts'
import type { Job } from '../job.ts'
import { plannedOffer } from './offers.ts'
import type { ShelfOffer } from './shelf-offer.ts'

type Way = Repair['options'][number]

/** The part of the shelf that a way of repair would take by the plan; null where it takes none. */
export const offerFor = (job: Pick<Job, 'shelf'>, { part }: Repair, way: Way): ShelfOffer | null =>
  way.id === 'salvaged' ? plannedOffer(job, part, middleCost(way)) : null

/**
 * What part and material of a repair cost by the plan, minor units: what a part of the shelf would bring if it were sold
 * instead, else the middle of what the blueprint says.
 */
export const repairCostMinor = (job: Pick<Job, 'shelf'>, repair: Repair, way: Way): number =>
  offerFor(job, repair, way)?.worthMinor ?? middleCost(way)

const middleCost = ({ costMinor: { low, high } }: Way): number => Math.round((low + high) / 2)
