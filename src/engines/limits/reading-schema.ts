import { z } from 'zod'
import type { LimitQuantity } from '../../facts/safety-limits.ts'
import type { Measurand } from './amount-text.ts'
import { instrumentSchema, leadsSchema, type UsedInstrument } from './instrument-schema.ts'
import type { Reading } from './instrument-reading.ts'
import { quantity, readValue, valueSchema } from './schema.ts'

export const limitQuantities = [
  'earth-continuity',
  'insulation',
  'protective-conductor-current',
  'touch-current',
  'substitute-leakage',
  'plug-pin-voltage',
] as const satisfies readonly LimitQuantity[]

/** What was shown. `value: null` with `shown: "above"`: beyond all that the instrument shows, such as `OL` or `open`. */
const shownSchema = z.strictObject({
  shown: z.enum(['figure', 'above', 'below']).default('figure'),
  value: valueSchema.nullable(),
  rangeMaximum: valueSchema.nullable().default(null),
  testVoltageV: quantity('voltageV').nullable().default(null),
  /** Leads as they were on the day, instead of those of the specification. */
  leads: leadsSchema.nullable().default(null),
})

/** Fields of a reading with its instrument. */
export const measuredFields = { reading: shownSchema, instrument: instrumentSchema }

type Shown = z.output<typeof shownSchema>
export type Measured = { readonly reading: Reading; readonly instrument: UsedInstrument }

/** Reads the values in the unit of what is measured, and puts the leads of the day into the instrument. */
export const measuredOf = (
  measured: Measurand,
  given: { readonly reading: Shown; readonly instrument: UsedInstrument },
  report: (message: string) => void,
): Measured => {
  const { reading, instrument } = given
  const read = (value: number | string): number => readValue(value, measured, report)
  if (reading.value === null && reading.shown !== 'above') {
    report('Only “above” goes without a value. Write what the instrument showed')
  }
  const rangeMaximum = reading.rangeMaximum === null ? null : read(reading.rangeMaximum)
  if (rangeMaximum !== null && !hasRange(instrument, rangeMaximum)) {
    report(`“${instrument.name}” has no range that ends at ${rangeMaximum}. Leave the range out, or name one it has`)
  }
  return {
    reading: {
      shown: reading.shown,
      value: reading.value === null ? Infinity : read(reading.value),
      rangeMaximum,
      testVoltageV: reading.testVoltageV,
    },
    instrument: reading.leads === null ? instrument : withLeads(instrument, reading.leads),
  }
}

const hasRange = ({ functions }: UsedInstrument, maximum: number): boolean =>
  functions.some(({ ranges }) => ranges.some((range) => range.maximum === maximum))

const withLeads = (instrument: UsedInstrument, leads: NonNullable<Shown['leads']>): UsedInstrument => ({
  name: instrument.name,
  functions: instrument.functions.map((used) => (used.measures === 'resistance' ? { ...used, leads } : used)),
})
