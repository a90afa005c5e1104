import { z } from 'zod'
import { grades } from '../../facts/asking.ts'

const id = z.string().min(1).max(120)
const minutes = z.number().min(0).max(10_000)
const text = z.string().trim().max(2000)

/** A cleaning task done. `dryHours`: how long what was washed must dry before it goes back. */
export const cleanedSchema = z.strictObject({
  kind: z.literal('cleaned'),
  task: id,
  part: id.optional(),
  minutes: minutes.default(0),
  costMinor: z.number().int().min(0).max(100_000_000).default(0),
  dryHours: z
    .number()
    .min(0)
    .max(24 * 14, 'what takes more than a fortnight to dry is spoilt')
    .optional(),
  text: text.default(''),
})

/** What was washed in that note is dry: felt and found dry, whatever the clock says. */
export const driedSchema = z.strictObject({ kind: z.literal('dried'), note: id, text: text.default('') })

/** How a part looks, before the cleaning or after it, by the grades of the trade. */
export const gradedSchema = z.strictObject({
  kind: z.literal('graded'),
  part: id,
  when: z.enum(['before', 'after']),
  grade: z.enum(grades),
  text: text.default(''),
})
