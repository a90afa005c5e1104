import { z } from 'zod'
import { advertSchema } from '../../machine/buying/advert.ts'

const id = z.string().min(1).max(120)
const words = z.string().trim().max(2000)
const minor = z.number().int().min(-100_000_000).max(100_000_000)

/** What was reckoned of an advert at the time, kept so that it can be held against what came of it. */
export const guessSchema = z.strictObject({
  /** The most to pay; below 0 stands for "not even for nothing". */
  ceilingMinor: minor,
  /** Money expected above the price asked, own time paid for, and its standard deviation. */
  expectedMinor: minor,
  spreadMinor: minor,
  expectedMin: z.number().min(0).max(100_000),
  lossChance: z.number().min(0).max(1),
  likely: z.array(z.strictObject({ fault: id, probability: z.number().min(0).max(1) })).max(12),
})
export type Guess = z.infer<typeof guessSchema>

/** The things that can be written about an advert that is weighed. */
export const advertContentSchema = z.discriminatedUnion('kind', [
  /** What it says, and what was reckoned of it; a later one takes the place of the one before. */
  z.strictObject({
    kind: z.literal('weighed'),
    name: words.min(1, 'an advert needs a name'),
    advert: advertSchema,
    guess: guessSchema,
  }),
  z.strictObject({ kind: z.literal('bought'), machine: id, paidMinor: z.number().int().min(0).max(100_000_000) }),
  z.strictObject({ kind: z.literal('passed'), reason: words.default('') }),
  z.strictObject({ kind: z.literal('said'), text: words.min(1) }),
  z.strictObject({ kind: z.literal('struck'), note: id, reason: words.default('') }),
])
export type AdvertContent = z.infer<typeof advertContentSchema>
export type AdvertContentInput = z.input<typeof advertContentSchema>
