import { z } from 'zod'

/** What the rating plate says. */
export const plateSchema = z.strictObject({
  voltageV: z.number().min(50, 'a mains machine has 50 V or more on its plate').max(480),
  frequencyHz: z.number().min(40).max(70),
  powerW: z.number().min(50).max(4000),
  protectionClass: z.enum(['I', 'II']),
  massKg: z.number().positive().max(60).optional(),
})

export type Plate = z.infer<typeof plateSchema>
