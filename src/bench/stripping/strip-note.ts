import { z } from 'zod'

const id = z.string().min(1).max(120)
const minutes = z.number().min(0).max(10_000)
const text = z.string().trim().max(2000)

/** What held a cover or a part: so many of a kind, and where they are kept until it goes back. */
export const fixingSchema = z.strictObject({
  count: z.number().int().min(1, 'at least one').max(200, 'at most 200'),
  kind: z.string().trim().min(1).max(120),
  place: z.string().trim().max(120).default(''),
})
export type Fixing = z.infer<typeof fixingSchema>

const fixings = z.array(fixingSchema).max(40)

/** A part taken out and laid by; it is still the machine's. */
export const takenOutSchema = z.strictObject({
  kind: z.literal('taken-out'),
  part: id,
  /** What held it; left out where nobody counted, empty where nothing held it. */
  fixings: fixings.optional(),
  minutes: minutes.default(0),
  text: text.default(''),
})

/**
 * A part put back where it was; `fixings`: those that went back with it, left out where nobody counted. `leftOverIn`: fixings that
 * were left over before and are in now, whether or not the others were counted.
 */
export const putInSchema = z.strictObject({
  kind: z.literal('put-in'),
  part: id,
  fixings: fixings.optional(),
  leftOverIn: fixings.optional(),
  minutes: minutes.default(0),
  text: text.default(''),
})

/** What can be said of the fixings of a cover as it comes off and goes on again; left out where nobody counted. */
export const coverFixings = { fixings: fixings.optional(), text: text.optional() }
/** As it goes on again: what was left over before and is in now, too. */
export const coverFixingsBack = { ...coverFixings, leftOverIn: fixings.optional() }
