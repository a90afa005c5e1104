import type { Currency } from '../../base/money.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { gradeFacts, type Grade } from '../../facts/asking.ts'
import type { PriceClass } from '../../facts/sale-prices.ts'
import { completenessOf } from '../../machine/completeness.ts'
import { modelKey, priceKindOf, type Comparable } from '../../machine/market.ts'
import type { MachineState } from '../contract.ts'
import { dayOf } from '../logs/calendar-day.ts'
import type { SeenPrice } from './price-note.ts'

/** A price of a machine like others: of a sale of one's own, or one that was seen. */
export type PriceRow = {
  /** `machine:m1` or `price:p1` */
  readonly id: string
  readonly from: 'own' | 'entered'
  /** What to call it in a list. */
  readonly name: string
  readonly model: string
  readonly kind: string
  /** Null for a blueprint that says no class: it is compared with its own kind alone. */
  readonly priceClass: PriceClass | null
  readonly priceMinor: number
  readonly currency: Currency
  readonly day: string
  readonly grade: Grade
  readonly completenessShare: number
}

/** A price that a machine was offered at, for how long, and whether it went. */
export type ListingRow = PriceRow & { readonly days: number; readonly ended: 'sold' | 'unsold' }

/** A price seen as the store's summaries give it. */
export type KeptPrice = SeenPrice & { readonly id: string }

/** Looks by the bench's own words until a machine has been offered under a grade. */
const usualGrade: Grade = 'B'

/** The grade that a machine was last offered under. */
export const gradeOf = ({ listed }: Pick<MachineState, 'listed'>): Grade => listed.at(-1)?.grade ?? usualGrade

type OfMachine = Omit<PriceRow, 'priceMinor' | 'day' | 'grade'>

const ofMachine = (state: MachineState, blueprint: Blueprint): OfMachine => ({
  id: `machine:${state.id}`,
  from: 'own',
  name: state.name,
  model: state.model,
  kind: priceKindOf(blueprint),
  priceClass: blueprint.worth.priceClass ?? null,
  currency: state.currency,
  completenessShare: completenessOf(blueprint, state.missing),
})

/** A machine sold working, as a price; null for one that is in hand, left otherwise, brought nothing, or is virtual. */
export const ownSale = (state: MachineState, blueprint: Blueprint): PriceRow | null => {
  const { left, practiceSeed } = state
  if (practiceSeed !== null || left?.exit !== 'sell-working' || left.receivedMinor <= 0) return null
  return {
    ...ofMachine(state, blueprint),
    priceMinor: left.receivedMinor,
    day: dayOf(left.at),
    grade: gradeOf(state),
  }
}

/** A price that was seen and entered. */
const ofSeen = (
  { id, model, priceMinor, currency, day, grade, completenessShare, place, text }: KeptPrice,
  blueprint: Blueprint,
): PriceRow => ({
  id: `price:${id}`,
  from: 'entered',
  name: [text, place].filter((words) => words !== '').join(', '),
  model,
  kind: priceKindOf(blueprint),
  priceClass: blueprint.worth.priceClass ?? null,
  priceMinor,
  currency,
  day,
  grade,
  completenessShare,
})

/** A price seen of a machine that sold; null for one that stood and did not. */
export const seenSale = (seen: KeptPrice, blueprint: Blueprint): PriceRow | null =>
  seen.sold ? ofSeen(seen, blueprint) : null

const dayMs = 24 * 60 * 60 * 1000
/** The engine counts in tenths of a day at least. */
const shortestDays = 0.1

/** The stretches in which a machine of one's own was offered; one that still stands has stood until now. */
export const ownListings = (state: MachineState, blueprint: Blueprint, now: string): readonly ListingRow[] =>
  state.practiceSeed !== null
    ? []
    : state.listed.map(({ note, priceMinor, grade, from, to, sold }) => ({
        ...ofMachine(state, blueprint),
        id: `machine:${state.id}:${note}`,
        priceMinor,
        grade,
        day: dayOf(to ?? now),
        days: Math.max(shortestDays, (Date.parse(to ?? now) - Date.parse(from)) / dayMs),
        ended: sold ? 'sold' : 'unsold',
      }))

/** How long a price seen stood, where that is known. */
export const seenListing = (seen: KeptPrice, blueprint: Blueprint): readonly ListingRow[] =>
  seen.days === undefined ? [] : [{ ...ofSeen(seen, blueprint), days: seen.days, ended: seen.sold ? 'sold' : 'unsold' }]

/** Whether a price speaks for machines of this blueprint: of its class, or of its kind where that has no class. */
export const isLike = ({ kind, priceClass }: Pick<PriceRow, 'kind' | 'priceClass'>, blueprint: Blueprint): boolean =>
  kind === priceKindOf(blueprint) || (priceClass !== null && priceClass === blueprint.worth.priceClass)

/** A price as the money engine takes it: like for like by its grade and by what was there. */
export const comparableOf = (row: PriceRow): Comparable => ({
  id: row.id,
  priceMinor: row.priceMinor,
  currency: row.currency,
  soldOn: row.day,
  from: row.from,
  machineKind: row.kind,
  model: modelKey(row.model),
  conditionShare: gradeFacts[row.grade].share,
  completenessShare: row.completenessShare,
})
