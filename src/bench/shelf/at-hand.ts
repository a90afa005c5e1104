import type { Region } from '../../facts/regions.ts'
import type { Job } from '../../machine/job.ts'
import { partFit, shelfOffers, type ShelfPart } from '../../machine/index.ts'
import type { PartFit, Spec, SpareWanted } from '../../machine/shelf/spare.ts'
import type { MachineState } from '../contract.ts'
import type { QueryDeps } from '../queries.ts'
import { shareOfStock, type PartState } from './part-state.ts'

/** What lies on the shelf, and by whose rules a lead or a fuse is chosen until the machine's notes say otherwise. */
export type ShelfAtHand = { readonly parts: readonly PartState[]; readonly region: Region }

/** More parts than this are not looked through for a machine. */
export const mostParts = 500

/** The parts that are there, the newest first. */
export const partsAtHand = async ({ books, bench }: Shelves): Promise<readonly PartState[]> =>
  (await books.logs(bench, 'part', { open: true, limit: mostParts })).items as readonly PartState[]

type Shelves = { readonly books: Pick<QueryDeps['books'], 'logs'>; readonly bench: QueryDeps['bench'] }

/** The job with what the shelf holds for it. A virtual machine is mended with virtual parts. */
export const withShelf = (job: Job, state: MachineState, { parts, region }: ShelfAtHand): Job =>
  state.practiceSeed === null
    ? { ...job, shelf: shelfOffers(job, wantedFor(job, state, region), parts.filter(isFor(state)).map(shelfPartOf)) }
    : job

/** Whether a part may go into a machine: it is there, nobody else's, and priced in the machine's money. */
export const isFor =
  ({ id, currency }: Pick<MachineState, 'id' | 'currency'>) =>
  (part: PartState): boolean =>
    part.count > 0 && part.currency === currency && (part.reservedFor === null || part.reservedFor === id)

const wantedFor = (job: Pick<Job, 'blueprint'>, state: MachineState, region: Region, measured?: Spec): SpareWanted => ({
  blueprint: job.blueprint,
  plate: state.plate,
  region: state.rules?.region ?? region,
  lead: state.lead,
  model: state.model,
  measured,
})

const shelfPartOf = (part: PartState): ShelfPart => ({
  id: part.id,
  name: part.name,
  partKind: part.partKind,
  spec: part.spec,
  condition: part.condition,
  wasPart: part.origin.kind === 'machine' ? part.origin.part : null,
  place: part.place,
  costMinor: shareOfStock(part.costMinor, part.count, 1),
  fetchesMinor: part.fetchesMinor,
})

/** One part of the shelf held against one part of a machine; null fits are of another kind and left out. */
export type Held = { readonly id: string; readonly name: string; readonly place: string; readonly fit: PartFit }

/**
 * Every part of the shelf that is of the kind of one of the machine's parts, with what was found, those that do not fit too.
 * @param measured what was measured on the old part
 */
export const heldAgainst = (
  job: Pick<Job, 'blueprint'>,
  state: MachineState,
  { parts, region }: ShelfAtHand,
  part: string,
  measured?: Spec,
): readonly Held[] =>
  parts.filter(isFor(state)).flatMap((one) => {
    const { id, name, place } = one
    const fit = partFit(wantedFor(job, state, region, measured), part, shelfPartOf(one))
    return fit === null ? [] : [{ id, name, place, fit }]
  })
