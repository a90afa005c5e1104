import { z } from 'zod'
import { repairBarriers, repairStatuses } from '../../facts/open-repair-data.ts'

const id = z.string().min(1).max(120)
const words = z.string().max(4000)

/** One repair attempt by the Open Repair Data Standard 0.3. An empty string or null: nobody knows. */
export const repairRecordSchema = z.strictObject({
  id: z.string().trim().min(1, 'a record has an id').max(200),
  dataProvider: words,
  /** ISO 3166-1 alpha-3. */
  country: z.string().regex(/^([A-Z]{3})?$/, 'a country is three capital letters, such as GBR'),
  partnerCategory: words,
  category: words,
  brand: words,
  yearOfManufacture: z.number().int().min(1000).max(9999).nullable(),
  productAgeYears: z.number().min(0).max(200).nullable(),
  status: z.enum(repairStatuses),
  barrier: z.enum(repairBarriers).nullable(),
  group: words,
  /** `2026-03-14` */
  eventDay: z.union([z.iso.date(), z.literal('')]),
  problem: words,
})
export type RepairRecord = z.infer<typeof repairRecordSchema>

/** What can be written in the log of a kept repair record: that it was taken in, and that this was a slip. */
export const recordContentSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('kept'), record: repairRecordSchema }),
  z.strictObject({ kind: z.literal('struck'), note: id, reason: z.string().trim().max(2000).default('') }),
])
export type RecordContent = z.infer<typeof recordContentSchema>
