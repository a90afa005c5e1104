import { z } from 'zod'
import { recallCheckId } from '../../facts/recall-check.ts'
import { regions } from '../../facts/regions.ts'
import { safetyStepIds } from '../../facts/safety-steps.ts'
import {
  instrumentSchema,
  leadLength,
  limitQuantities,
  profileNamed,
  sizeNamed,
  conductorSizes,
} from '../../engines/limits/index.ts'

const part = z.string().trim().min(1).max(200)

/** An instrument by its id or its own specification; kept with the specification, as a copy of its own. */
const usedInstrument = instrumentSchema.transform(({ name, functions }) => ({
  name,
  functions: functions.map(({ ranges, ...one }) => ({ ...one, ranges: ranges.map((range) => ({ ...range })) })),
}))

/** The lead a machine has: what limits of the protective conductor go by. */
export const provedLeadSchema = z.strictObject({
  size: z
    .string()
    .refine(
      (size) => sizeNamed(size) !== undefined,
      `no such size of conductor; use one of ${conductorSizes.map(({ id }) => id).join(', ')}`,
    ),
  lengthM: leadLength,
})

/** By which rules a machine is proved: a region, and one edition of its rules. */
export const rulesSchema = z.strictObject({
  region: z.enum(regions),
  profile: z.string().refine((id) => profileNamed(id) !== undefined, 'no such edition of rules is known here'),
})

/** What was found in one check after repair. The instrument stands in it with its specification, so that it can be judged again as it was. */
export const findingSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('look'),
    /** A check after repair, or the look-up in the recall list. */
    step: z.enum([...safetyStepIds, recallCheckId]),
    good: z.boolean(),
    text: z.string().trim().max(2000).default(''),
  }),
  z.strictObject({
    kind: z.literal('reading'),
    quantity: z.enum(limitQuantities),
    /** Where it was taken, such as “motor housing”. */
    part: part.default('the machine'),
    /** `above`: more than the value, or beyond all that the instrument shows where there is none. */
    shown: z.enum(['figure', 'above', 'below']).default('figure'),
    /** Ohm, ampere or volt. */
    value: z.number().min(0, 'nothing measured here is below zero').nullable(),
    testVoltageV: z.number().positive().nullable().default(null),
    instrument: usedInstrument,
    /** When the instrument was last checked, as 2026-03-14; empty where nobody knows. */
    checkedOn: z.union([z.iso.date(), z.literal('')]).default(''),
  }),
])

export type Finding = z.infer<typeof findingSchema>
export type ProvedLead = z.infer<typeof provedLeadSchema>
export type Rules = z.infer<typeof rulesSchema>
