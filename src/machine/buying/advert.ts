import { z } from 'zod'
import { currencies, type Currency } from '../../base/money.ts'
import { conditionIds, mostDistanceKm } from '../../facts/buying.ts'
import { complaintIds } from '../../facts/complaints.ts'
import { wearLevels } from '../../facts/age-and-wear.ts'
import { claimIds } from '../../facts/seller-claims.ts'
import { plateSchema } from '../plate.ts'
import { resultSchema } from '../result.ts'

const id = z.string().min(1).max(120)
const amount = z
  .number()
  .int('an amount of money is a whole number of pence or cents')
  .min(0, 'a price is zero or more')
  .max(10_000_000)

/** What the buyer wants of the deal: money left above own time, or so much for each hour of it. */
export const wantedSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('profit'), minor: amount }),
  z.strictObject({ kind: z.literal('an-hour'), minor: amount }),
])

/** What the seller answered, or photographs and looks showed: an answer to each question at most. */
export const answersSchema = z.array(z.strictObject({ question: id, answer: id })).max(60)
export const claimsSchema = z.array(z.enum(claimIds)).max(claimIds.length)

/** A machine that is offered, as far as two minutes on a telephone tell. Money in minor units of `currency`. */
export const advertSchema = z.strictObject({
  blueprint: id,
  /** Left out, the blueprint's. */
  plate: plateSchema.optional(),
  /** What the seller complains of; left out, what is read from the words. */
  complaints: z.array(z.enum(complaintIds)).max(complaintIds.length).optional(),
  /** What else the seller claims; left out, what is read from the words. */
  claims: claimsSchema.optional(),
  words: z.string().max(4000).default(''),
  ageYears: z.number().min(0, 'an age is zero or more').max(100, 'no machine of these is older than 100').optional(),
  wear: z.enum(wearLevels).optional(),
  /** Parts that are not there. */
  missing: z.array(id).max(200).default([]),
  condition: z.enum(conditionIds).default('good'),
  askingMinor: amount,
  distanceKm: z
    .number()
    .min(0, 'a distance is zero or more')
    .max(mostDistanceKm.value, `nobody fetches a machine from further than ${mostDistanceKm.value} km; give kilometres one way`), // prettier-ignore
  currency: z.enum(currencies as [Currency, ...Currency[]]).default('GBP'),
  wanted: wantedSchema.default({ kind: 'profit', minor: 0 }),
  /** What the seller answered, or photographs showed. */
  answers: answersSchema.default([]),
  /** Checks made on the spot. */
  looked: z
    .array(z.strictObject({ check: id, result: resultSchema }))
    .max(200)
    .default([]),
})

export type Advert = z.infer<typeof advertSchema>
export type AdvertInput = z.input<typeof advertSchema>
export type Wanted = Advert['wanted']
export type SellerAnswer = Advert['answers'][number]
