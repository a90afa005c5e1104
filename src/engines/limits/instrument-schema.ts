import { z } from 'zod'
import { testInstruments, type InstrumentFunction } from '../../facts/test-instruments.ts'

const notNegative = z.number().min(0, 'A specification is zero or more')

export const leadsSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('subtract'), ohm: notNegative, spreadOhm: notNegative }),
  z.strictObject({ kind: z.literal('nulled'), spreadOhm: notNegative }),
])

const accuracySchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('specification'),
    percent: notNegative.max(50, 'An instrument that may be out by half shows nothing'),
    digits: notNegative,
  }),
  z.strictObject({ kind: z.literal('absolute'), plusMinus: notNegative }),
  z.strictObject({
    kind: z.literal('operating-uncertainty'),
    percent: notNegative.max(50, 'An instrument that may be out by half shows nothing'),
  }),
])

const rangesSchema = z
  .array(z.strictObject({ maximum: z.number().positive(), resolution: z.number().positive() }))
  .min(1, 'An instrument has one range at least')
  .refine(
    (ranges) => ranges.every(({ maximum }, i) => i === 0 || maximum > ranges[i - 1].maximum),
    'List the ranges from the smallest up',
  )
  .refine(
    (ranges) => ranges.every(({ maximum, resolution }) => resolution < maximum),
    'The last place is smaller than the range. Check the units: ohm, ampere, volt',
  )

const functionSchema = z.strictObject({
  measures: z.enum(['resistance', 'protective-conductor-current', 'touch-current', 'substitute-leakage', 'voltage']),
  accuracy: accuracySchema.nullable().default(null),
  ranges: rangesSchema,
  leads: leadsSchema.nullable().default(null),
  testVoltageV: z.number().positive().nullable().default(null),
  testCurrentA: z.number().positive().nullable().default(null),
})

export type UsedInstrument = { readonly name: string; readonly functions: readonly InstrumentFunction[] }

const noSpecification = (name: string): string =>
  `“${name}” has no specification, so no reading of it can be judged. Give its accuracy from the manual: per cent of the reading and digits, or plus or minus so much, and its ranges`

/** An instrument by the id of a known one, or with its own specification. */
export const instrumentSchema = z
  .union([
    z.string().min(1),
    z.strictObject({ name: z.string().min(1), functions: z.array(functionSchema).default([]) }),
  ])
  .transform((given, context): UsedInstrument => {
    if (typeof given !== 'string') {
      const functions = given.functions.flatMap(({ accuracy, ...rest }): readonly InstrumentFunction[] =>
        accuracy === null ? [] : [{ ...rest, accuracy }],
      )
      if (functions.length > 0 && functions.length === given.functions.length) return { name: given.name, functions }
      context.addIssue({ code: 'custom', message: noSpecification(given.name) })
      return z.NEVER
    }
    const known = testInstruments.find(({ id }) => id === given)
    if (known !== undefined) return { name: known.name, functions: known.functions }
    const ids = testInstruments.map(({ id }) => id).join(', ')
    context.addIssue({
      code: 'custom',
      message: `${noSpecification(given)}; or name one known here: ${ids}`,
    })
    return z.NEVER
  })
