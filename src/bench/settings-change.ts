import { z } from 'zod'
import { currencies, type Currency } from '../base/money.ts'
import { costLimits, costNames, type CostName } from '../facts/trade-costs.ts'
import { attitudeIds } from '../facts/attitudes.ts'
import { regions } from '../facts/regions.ts'

const amount = 'an amount is 0 to 1,000,000.00'

const costSchema = (name: CostName) => {
  const { most, whole } = costLimits[name]
  const number = whole ? z.number().int() : z.number()
  const range = `it is ${whole ? 'a whole number from ' : ''}0 to ${most}`
  return number.min(0, range).max(most, range)
}

const forEachCost = <Schema>(of: (name: CostName) => Schema): Readonly<Record<CostName, Schema>> =>
  Object.fromEntries(costNames.map((name) => [name, of(name)])) as Record<CostName, Schema>

/** Costs as they are set: only those that are. */
export const costsSetSchema = z.strictObject(forEachCost((name) => costSchema(name).optional()))

/** A change of the costs: null puts one back to what it is in the region. */
const costsChangeSchema = z.strictObject(forEachCost((name) => costSchema(name).nullable().optional()))

/** A change of the settings; what is left out stays as it was. */
export const settingsChangeSchema = z.strictObject({
  hourMinor: z.number().int().min(0, amount).max(100_000_000, amount).optional(),
  currency: z.enum(currencies as readonly [Currency, ...Currency[]]).optional(),
  attitude: z.enum(attitudeIds).optional(),
  region: z.enum(regions).optional(),
  checkedBy: z.string().trim().max(120, 'a name has 120 letters at most').optional(),
  keepOriginals: z.boolean().optional(),
  costs: costsChangeSchema.optional(),
})
export type SettingsChange = z.infer<typeof settingsChangeSchema>

/** A change as it is kept: with the day and time it was made. */
export const keptChangeSchema = z.strictObject({ at: z.iso.datetime(), change: settingsChangeSchema })
export type KeptChange = z.infer<typeof keptChangeSchema>
