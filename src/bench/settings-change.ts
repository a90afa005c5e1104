import { z } from 'zod'
import { currencies, type Currency } from '../base/money.ts'
import { attitudeIds } from '../facts/attitudes.ts'
import { regions } from '../facts/regions.ts'

const amount = 'an amount is 0 to 1,000,000.00'

/** A change of the settings; what is left out stays as it was. */
export const settingsChangeSchema = z.strictObject({
  hourMinor: z.number().int().min(0, amount).max(100_000_000, amount).optional(),
  currency: z.enum(currencies as readonly [Currency, ...Currency[]]).optional(),
  attitude: z.enum(attitudeIds).optional(),
  region: z.enum(regions).optional(),
  checkedBy: z.string().trim().max(120, 'a name has 120 letters at most').optional(),
})
export type SettingsChange = z.infer<typeof settingsChangeSchema>

/** A change as it is kept: with the day and time it was made. */
export const keptChangeSchema = z.strictObject({ at: z.iso.datetime(), change: settingsChangeSchema })
export type KeptChange = z.infer<typeof keptChangeSchema>
