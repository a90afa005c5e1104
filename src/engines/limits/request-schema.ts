import { z } from 'zod'
import { safetyStepIds } from '../../facts/safety-steps.ts'
import { limitQuantities, measuredFields, measuredOf } from './reading-schema.ts'
import {
  classSchema,
  leadLength,
  leadSchema,
  machineSchema,
  quantity,
  readValue,
  regionSchema,
  sizeSchema,
  valueSchema,
} from './schema.ts'

const positive = (kind: Parameters<typeof quantity>[0], what: string) =>
  quantity(kind).refine((value) => value > 0, `${what} is above zero`)

const temperature = z.number().min(-20, 'A bench is between −20 and 80 °C').max(80, 'A bench is between −20 and 80 °C')
const conductors = z.union([z.literal(1), z.literal(2)])
const profile = z.string().min(1)

const plateSchema = z.strictObject({
  voltageV: positive('voltageV', 'The voltage of a plate'),
  powerW: positive('powerW', 'The power of a plate').nullable().default(null),
  currentA: positive('currentA', 'The current of a plate').nullable().default(null),
  class: classSchema,
  massKg: positive('massKg', 'A machine’s mass').nullable().default(null),
})

const cableSchema = z.strictObject({
  id: z.string().min(1),
  type: z.string().min(1).nullable().default(null),
  size: z.string().min(1).nullable().default(null),
  cores: z.number().int().min(1).nullable().default(null),
  lengthM: leadLength.nullable().default(null),
  condition: z.enum(['sound', 'cut-or-flattened', 'hard-or-sticky', 'joined', 'not-looked-at']),
  hasOldColours: z.boolean().default(false),
})

const givenLimit = z.strictObject({
  kind: z.literal('given'),
  sense: z.enum(['at-most', 'at-least']),
  value: valueSchema,
  testVoltageV: positive('voltageV', 'A test voltage').nullable().default(null),
  leastTestCurrentA: positive('currentA', 'A test current').nullable().default(null),
  /** The document says that its figure already allows for the instrument: then no guard band is taken. */
  includesUncertainty: z.boolean().default(false),
})
const profileLimit = z.strictObject({
  kind: z.literal('profile'),
  profile,
  machine: machineSchema,
  lead: leadSchema.nullable().default(null),
})

const judge = z
  .strictObject({
    kind: z.literal('judge'),
    quantity: z.enum(limitQuantities),
    ...measuredFields,
    limit: z.discriminatedUnion('kind', [profileLimit, givenLimit]),
  })
  .transform((given, context) => {
    const report = (path: string) => (message: string) => context.addIssue({ code: 'custom', path: [path], message })
    const { limit } = given
    const value = limit.kind === 'given' ? readValue(limit.value, given.quantity, report('limit')) : 0
    return {
      ...given,
      ...measuredOf(given.quantity, given, report('reading')),
      limit: limit.kind === 'given' ? { ...limit, value } : limit,
    }
  })

const cable = z
  .strictObject({
    kind: z.literal('cable'),
    size: sizeSchema,
    lengthM: leadLength,
    conductors: conductors.default(1),
    temperatureC: temperature.default(20),
    isTinned: z.boolean().default(false),
    hasContacts: z.boolean().default(false),
    ...measuredFields,
  })
  .transform((given, context) => {
    const report = (message: string) => context.addIssue({ code: 'custom', path: ['reading'], message })
    return { ...given, ...measuredOf('resistance', given, report) }
  })

const lookFinding = z.strictObject({ kind: z.literal('look'), step: z.enum(safetyStepIds), good: z.boolean() })
const readingFinding = z
  .strictObject({
    kind: z.literal('reading'),
    quantity: z.enum(limitQuantities),
    part: z.string().min(1).default('the machine'),
    ...measuredFields,
  })
  .transform((given, context) => {
    const report = (message: string) => context.addIssue({ code: 'custom', path: ['reading'], message })
    return { ...given, ...measuredOf(given.quantity, given, report) }
  })

const about = {
  profile,
  region: regionSchema,
  machine: machineSchema,
  lead: leadSchema.nullable().default(null),
}

/** What to find out about limits, leads and proof. Quantities are numbers in the unit of their name, or text with a unit. */
export const limitsRequestSchema = z.strictObject({
  format: z.literal('thrum-limits-1'),
  do: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('profiles'), region: regionSchema }),
    z.strictObject({ kind: z.literal('steps'), ...about }),
    judge,
    z.strictObject({
      kind: z.literal('verdict'),
      ...about,
      acceptance: z.enum(['guarded', 'simple']).default('guarded'),
      findings: z.array(z.discriminatedUnion('kind', [lookFinding, readingFinding])),
    }),
    z.strictObject({
      kind: z.literal('expected-earth'),
      profile,
      lead: leadSchema,
      hasReel: z.boolean().default(false),
    }),
    z.strictObject({
      kind: z.literal('conductor'),
      size: sizeSchema,
      lengthM: leadLength,
      conductors: conductors.default(1),
      temperatureC: temperature.default(20),
      isTinned: z.boolean().default(false),
    }),
    cable,
    z.strictObject({
      kind: z.literal('lead'),
      plate: plateSchema,
      region: regionSchema,
      lengthM: leadLength,
      cables: z.array(cableSchema).default([]),
    }),
    z.strictObject({
      kind: z.literal('fuse'),
      ratingA: positive('currentA', 'The rating of a fuse'),
      currentA: positive('currentA', 'A current'),
    }),
    z.strictObject({
      kind: z.literal('seized'),
      plate: plateSchema,
      region: regionSchema,
      fuseA: positive('currentA', 'The rating of a fuse'),
    }),
    z.strictObject({
      kind: z.literal('capacitor'),
      capacitanceF: positive('capacitanceF', 'A capacitance'),
      voltageV: quantity('voltageV').refine((volts) => volts >= 50, 'Mains is 50 V at least'),
      frequencyHz: z.number().min(40).max(70),
    }),
  ]),
})

export type LimitsRequest = z.output<typeof limitsRequestSchema>
