import { z } from 'zod'
import { dayFromText } from './calendar.ts'

const month = z.int().min(1, 'a month is 1 to 12').max(12, 'a month is 1 to 12')
const day = z.int().min(1).max(31, 'a day is 1 to 31')
const week = z.int().min(1).max(53, 'a year has at most 53 weeks')
const digit = z.int('a digit is 0 to 9').min(0, 'a digit is 0 to 9').max(9, 'a digit is 0 to 9')
/** Two digits as seen, or all four. */
const year = z.union([z.int().min(0).max(99), z.int().min(1950).max(2100)], 'a year is two digits or 1950 to 2100')
const part = z.string().min(1)
const isoDay = z.string().refine((text) => dayFromText(text) !== null, 'a day is YYYY-MM-DD and must exist')
const years = z.array(year).min(1).optional()

const oneRing = z.strictObject({
  kind: z.literal('one-ring'),
  seen: z.strictObject({
    left: digit,
    right: digit,
    /** The numeral that the arrow points at. */
    month: month.optional(),
    /** The numeral that is missing, perhaps under the arrow. */
    coveredMonth: month.optional(),
  }),
})
const twoRings = z.strictObject({ kind: z.literal('two-rings'), seen: z.strictObject({ month, year }) })
const threeRings = z.strictObject({
  kind: z.literal('three-rings'),
  seen: z.strictObject({
    month,
    day: z.union([day, z.strictObject({ tens: z.int().min(0).max(3), units: digit })]),
    /** Left out where the third ring is a ring of the day. */
    year: year.optional(),
    yearsOnRing: years,
  }),
})
const dots = z.strictObject({ kind: z.literal('dots'), seen: z.strictObject({ year, dots: month }) })
const weeks = z.strictObject({ kind: z.literal('week'), seen: z.strictObject({ year, week }) })
const written = z.strictObject({
  kind: z.literal('written'),
  seen: z.strictObject({ year, month: month.optional(), day: day.optional() }),
})

/** A date stamp as the eye sees it on one part. */
export const stampSchema = z.discriminatedUnion('kind', [
  oneRing.extend({ part }),
  twoRings.extend({ part }),
  threeRings.extend({ part }),
  dots.extend({ part }),
  weeks.extend({ part }),
  written.extend({ part }),
])

const serial = z.string().trim().min(1).max(60)
const plateClues = z
  .strictObject({
    date: isoDay.optional(),
    dryEuOrUk: z.boolean().optional(),
    ukca: z.boolean().optional(),
    sleevedPins: z.boolean().optional(),
  })
  .refine(
    (clues) => Object.values(clues).some((clue) => clue !== undefined && clue !== false),
    'name one clue at least',
  )

/** What is read off one part, the part left out: a date stamp, the serial number, or what plate and plug show. */
export const markReadingSchema = z.discriminatedUnion('kind', [
  oneRing,
  twoRings,
  threeRings,
  dots,
  weeks,
  written,
  z.strictObject({ kind: z.literal('serial'), seen: z.strictObject({ number: serial }) }),
  z.strictObject({ kind: z.literal('plate'), seen: plateClues }),
])
export type MarkReading = z.infer<typeof markReadingSchema>

export type Stamp = z.infer<typeof stampSchema>

/** All date stamps of one machine, with its plate and serial number. Today's date is given, never looked up. */
export const stampsSchema = z.strictObject({
  today: isoDay,
  /** The first year the design can have been made. */
  earliestYear: z.int().min(1950).max(2100),
  parts: z.array(part),
  stamps: z.array(stampSchema),
  serial: z.string().min(1).optional(),
  plate: z
    .strictObject({
      date: isoDay.optional(),
      inputW: z.number().positive().optional(),
      /** Whether it is a dry machine with an EU or UK label: the power limits bind no others. */
      dryEuOrUk: z.boolean().optional(),
      ukca: z.boolean().optional(),
      sleevedPins: z.boolean().optional(),
    })
    .optional(),
})
export type StampsInput = z.infer<typeof stampsSchema>
