import { z } from 'zod'
import { currencies, type Currency } from '../../base/money.ts'
import { tradingDay } from '../logs/trading-day.ts'

const id = z.string().min(1).max(120)
const words = z.string().trim().max(2000)

/** What can be written about money that the bench spent or took in for no machine in particular: tools, tape, a stall. */
export const expenseContentSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('spent'),
    what: words.min(1, 'say what it was for'),
    costMinor: z.number().int().min(1, 'an amount is above zero').max(100_000_000),
    currency: z.enum(currencies as readonly [Currency, ...Currency[]]),
    day: tradingDay,
    minutes: z.number().min(0).max(10_000).default(0),
  }),
  z.strictObject({ kind: z.literal('struck'), note: id, reason: words.default('') }),
])
export type ExpenseContent = z.infer<typeof expenseContentSchema>
export type ExpenseContentInput = z.input<typeof expenseContentSchema>
