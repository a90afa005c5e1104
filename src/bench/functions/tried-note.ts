import { z } from 'zod'
import { triedResults } from '../../machine/functions/tried-result.ts'

const id = z.string().min(1).max(120)

/** A function tried before the sale: the cord reel, the height drive, a latch, a tool. */
export const triedSchema = z.strictObject({
  kind: z.literal('tried'),
  function: id,
  result: z.enum(triedResults),
  /** Where it is not there: the part that is missing. */
  part: id.optional(),
  minutes: z.number().min(0).max(10_000).default(0),
  text: z.string().trim().max(2000).default(''),
})
