import { z } from 'zod'
import { currencies, type Currency } from '../../base/money.ts'
import { regions } from '../../facts/regions.ts'
import { priceClassIds } from '../../facts/sale-prices.ts'
import { booksTask } from './books/request-schema.ts'

const largestMinor = 1_000_000_000

/** A price: whole minor units (pence, cents) above zero. */
const price = z
  .number()
  .int('A price is a whole number of minor units, such as 4500 for £45.00')
  .min(1, 'A price is above zero; leave out what was given away')
  .max(largestMinor, 'A price is at most ten million')
const cost = z
  .number()
  .int('Money is a whole number of minor units, such as 450 for £4.50')
  .min(0, 'A cost is zero or more')
  .max(largestMinor, 'A cost is at most ten million')
const share = z.number().min(0, 'A share is between 0 and 1').max(1, 'A share is between 0 and 1')
const aboveZero = (largest: number, what: string) =>
  z.number().gt(0, `${what} is above 0`).max(largest, `${what} is at most ${largest}`)
const name = z.string().trim().min(1)
const currency = z.enum(currencies as [Currency, ...Currency[]])
const day = z.iso.date('A day is written as 2026-03-31')
const days = z.number().min(0.1, 'A listing stood for at least a tenth of a day').max(10_000)

const band = z
  .strictObject({ lowMinor: price, highMinor: price })
  .refine(({ lowMinor, highMinor }) => lowMinor < highMinor, {
    message: 'The low end of a band is below its high end. Write the smaller one as lowMinor',
    path: ['highMinor'],
  })

/** Condition beside a usual one, and how much of the tools and parts is there, as shares of the price. */
const state = {
  conditionShare: aboveZero(2, 'A condition share').default(1),
  completenessShare: aboveZero(1, 'A completeness share').default(1),
}

const comparable = z.strictObject({
  id: name,
  priceMinor: price,
  currency: currency.nullable().default(null),
  soldOn: day,
  from: z.enum(['own', 'entered']),
  /** Null: not known. A model is known by its kind and its own name. */
  machineKind: name.nullable().default(null),
  model: name.nullable().default(null),
  ...state,
})

const priceTask = z.strictObject({
  kind: z.literal('price'),
  currency,
  /** The day to reckon ages from. */
  on: day,
  class: z.enum(priceClassIds).nullable().default(null),
  /** What nine machines in ten of the class fetch; takes the place of the table's figure. */
  prior: band.nullable().default(null),
  machineKind: name.nullable().default(null),
  model: name.nullable().default(null),
  ...state,
  comparables: z.array(comparable).max(500, 'At most 500 comparables; leave the oldest out').default([]),
})

const listing = z.strictObject({
  id: name,
  priceMinor: price,
  /** What such machines fetch, as reckoned when it was listed. */
  medianMinor: price,
  days,
  ended: z.enum(['sold', 'unsold']),
})

const daysTask = z.strictObject({
  kind: z.literal('days-to-sell'),
  currency,
  medianMinor: price,
  listings: z.array(listing).max(2000, 'At most 2000 listings; leave the oldest out').default([]),
  feeShare: share.default(0),
  /** What a day of standing costs: room, money tied up. */
  holdingMinorPerDay: cost.default(0),
  /** When it is given up on, and what it then brings. */
  horizonDays: z.number().int().min(1).max(730).default(90),
  leftMinor: cost.default(0),
})

const part = z.strictObject({
  id: name,
  price: z.discriminatedUnion('kind', [
    z
      .strictObject({ kind: z.literal('band'), ...band.shape })
      .refine(({ lowMinor, highMinor }) => lowMinor < highMinor, {
        message: 'The low end of a band is below its high end. Write the smaller one as lowMinor',
        path: ['highMinor'],
      }),
    z.strictObject({ kind: z.literal('exact'), minor: price }),
  ]),
  soundShare: share.default(1),
  sellsShare: share.default(1),
  feeShare: share.default(0),
  /** Spent when it sells: packing, postage, own time. */
  saleCostMinor: cost.default(0),
})

const sumTask = z.strictObject({
  kind: z.literal('sum'),
  currency,
  parts: z.array(part).min(1).max(200),
  /** Spent whatever sells. */
  costMinor: cost.default(0),
})

const marginTask = z.strictObject({
  kind: z.literal('margin-scheme'),
  region: z.enum(regions),
  /** Per cent, at most one decimal; null: the region's. */
  ratePercent: z.number().min(0).max(50).multipleOf(0.1, 'A rate has at most one decimal').nullable().default(null),
  /** Things reckoned each by itself. What their repair cost is left out: it does not raise the purchase price. */
  items: z
    .array(z.strictObject({ id: name, purchaseMinor: cost, saleMinor: cost }))
    .max(10_000)
    .default([]),
  /** Accounting periods whose things are taken all together, in order. */
  periods: z
    .array(
      z.strictObject({
        id: name,
        purchasesMinor: z.array(cost).max(10_000),
        salesMinor: z.array(cost).max(10_000),
      }),
    )
    .max(400)
    .default([]),
  /** What the stock cost that was there when periods began. */
  openingMinor: cost.default(0),
})

/** What to find out about money. Amounts are whole minor units of one currency; shares are 0 to 1. */
export const moneyRequestSchema = z.strictObject({
  format: z.literal('thrum-money-1'),
  do: z.discriminatedUnion('kind', [priceTask, daysTask, sumTask, booksTask, marginTask]),
})

export type MoneyRequest = z.output<typeof moneyRequestSchema>
type Task<K> = Extract<MoneyRequest['do'], { readonly kind: K }>
export type PriceTask = Task<'price'>
export type Comparable = PriceTask['comparables'][number]
export type DaysTask = Task<'days-to-sell'>
export type SumTask = Task<'sum'>
export type BooksTask = Task<'books'>
export type MarginTask = Task<'margin-scheme'>
export type Part = SumTask['parts'][number]
