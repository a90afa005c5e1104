import { z } from 'zod'

/** A result as it was read. `ohms` is what the meter showed, in ohm. */
export const resultSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('ohms'), resistanceOhm: z.number().min(0, 'a resistance is zero or more') }),
  z.strictObject({ kind: z.literal('open') }),
  z.strictObject({ kind: z.literal('jumps') }),
  z.strictObject({ kind: z.literal('grade'), outcome: z.string().min(1).max(120) }),
  z.strictObject({ kind: z.literal('cannot-tell') }),
])

export type ReadingResult = z.infer<typeof resultSchema>
