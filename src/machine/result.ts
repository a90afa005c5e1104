import { z } from 'zod'

/** A result as it was read. `ohms` is what the meter showed, in ohm. */
export const resultSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('ohms'), resistanceOhm: z.number().min(0, 'a resistance is zero or more') }),
  z.strictObject({ kind: z.literal('open') }),
  /** The figure climbs and then goes to open: the meter charges a capacitor. */
  z.strictObject({ kind: z.literal('charging') }),
  z.strictObject({ kind: z.literal('jumps') }),
  /** `watts`: what the power meter showed, where the check is read in watts; the outcome follows from it and the plate. */
  z.strictObject({
    kind: z.literal('grade'),
    outcome: z.string().min(1).max(120),
    watts: z.number().min(0, 'a power is zero or more').max(20_000).optional(),
  }),
  z.strictObject({ kind: z.literal('cannot-tell') }),
])

export type ReadingResult = z.infer<typeof resultSchema>
