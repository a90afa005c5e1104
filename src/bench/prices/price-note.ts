import { z } from 'zod'
import { currencies, type Currency } from '../../base/money.ts'
import { grades } from '../../facts/asking.ts'
import { tradingDay } from '../logs/trading-day.ts'

const id = z.string().min(1).max(120)
const words = z.string().trim().max(2000)
const price = z.number().int().min(1, 'a price is above zero').max(100_000_000)

/** What can be written about a price that was seen elsewhere. */
export const priceContentSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('seen'),
    blueprint: id,
    /** As it stood on the plate or in the advert; empty when it was not said. */
    model: words.default(''),
    priceMinor: price,
    currency: z.enum(currencies as readonly [Currency, ...Currency[]]),
    /** The day it sold, or was last seen for sale. */
    day: tradingDay,
    /** False: it stood at this price and did not sell. */
    sold: z.boolean().default(true),
    /** How long it stood, where that is known. */
    days: z.number().min(0.1).max(3650).optional(),
    grade: z.enum(grades).default('B'),
    /** How much of its tools and parts was there, 0 to 1. */
    completenessShare: z.number().gt(0, 'a completeness share is above 0').max(1).default(1),
    place: words.default(''),
    text: words.default(''),
  }),
  z.strictObject({ kind: z.literal('struck'), note: id, reason: words.default('') }),
])
export type PriceContent = z.infer<typeof priceContentSchema>
export type PriceContentInput = z.input<typeof priceContentSchema>
export type SeenPrice = Extract<PriceContent, { kind: 'seen' }>
