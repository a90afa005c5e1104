import { z } from 'zod'
import { currencies, type Currency } from '../../base/money.ts'
import { partKindIds } from '../../facts/part-kinds.ts'

const id = z.string().min(1).max(120)
const words = z.string().trim().max(2000)
const minor = z.number().int().min(0).max(100_000_000)
const count = z.number().int().min(1, 'a count is 1 to 10,000').max(10_000, 'a count is 1 to 10,000')

/** How a spare was found to be. */
export const partConditions = ['tested', 'looks-sound', 'untested', 'worn'] as const
export type PartCondition = (typeof partConditions)[number]

/** What it is measured by, by the fields of its kind: a number in the field's unit, or words. */
export const partSpecSchema = z.record(id, z.union([z.number().positive().max(1e6), z.string().trim().min(1).max(120)]))
export type PartSpec = z.infer<typeof partSpecSchema>

/** Where a part came from. */
export const partOriginSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('machine'), machine: id, part: id }),
  z.strictObject({ kind: z.literal('bought'), where: words }),
  /** It lay there when the shelf was begun, or was given. */
  z.strictObject({ kind: z.literal('there') }),
])
export type PartOrigin = z.infer<typeof partOriginSchema>

/** The things that can be written about a part on the shelf. */
export const partContentSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('put'),
    name: words.min(1, 'a part needs a name'),
    partKind: z.enum(partKindIds),
    spec: partSpecSchema.default({}),
    condition: z.enum(partConditions).default('untested'),
    origin: partOriginSchema.default({ kind: 'there' }),
    currency: z.enum(currencies as readonly [Currency, ...Currency[]]),
    /** What all of them cost: paid for them, or their share of a machine's cost. */
    costMinor: minor.default(0),
    count: count.default(1),
    place: words.default(''),
    /** What one would fetch. */
    fetchesMinor: minor.optional(),
  }),
  /** What came to be known of it; what is left out stays as it was. */
  z.strictObject({
    kind: z.literal('described'),
    name: words.min(1, 'a part needs a name').optional(),
    spec: partSpecSchema.optional(),
    condition: z.enum(partConditions).optional(),
    place: words.optional(),
    fetchesMinor: minor.optional(),
  }),
  /** Kept for a machine, so that nobody else takes it. */
  z.strictObject({ kind: z.literal('reserved'), machine: id }),
  z.strictObject({ kind: z.literal('released') }),
  /** One went into a machine, with its share of the cost. */
  z.strictObject({ kind: z.literal('used'), machine: id, costMinor: minor }),
  z.strictObject({
    kind: z.literal('sold'),
    count: count.default(1),
    receivedMinor: minor,
    feeMinor: minor.default(0),
    postageMinor: minor.default(0),
    minutes: z.number().min(0).max(10_000).default(0),
  }),
  z.strictObject({ kind: z.literal('scrapped'), count: count.default(1), reason: words.default('') }),
  /** So many were found when they were counted. */
  z.strictObject({ kind: z.literal('counted'), count: z.number().int().min(0).max(10_000), reason: words.default('') }),
  z.strictObject({ kind: z.literal('said'), text: words.min(1) }),
  z.strictObject({ kind: z.literal('struck'), note: id, reason: words.default('') }),
])

export type PartContent = z.infer<typeof partContentSchema>
export type PartContentInput = z.input<typeof partContentSchema>
