import type { Source } from '../base/source.ts'

/** One resistance range of a meter. */
export type MeterRange = { readonly maximumOhm: number; readonly resolutionOhm: number }

/** How well an ohmmeter reads: ±(percent of the reading + digits of the last place), ranges from the smallest up. */
export type MeterSpec = {
  readonly id: string
  readonly name: string
  readonly percent: number
  readonly digits: number
  readonly ranges: readonly MeterRange[]
  /** What the leads add to a reading. */
  readonly leadOhm: number
  /** Half-width of what is not known about the leads and the touch of the tips. */
  readonly leadSpreadOhm: number
  readonly source: Source
  readonly leadSource: Source
}

/** Six ranges, ten times as far at each step, up to `first` × 10⁵. */
const decades = (firstOhm: number, firstResolutionOhm: number): readonly MeterRange[] =>
  [1, 10, 100, 1000, 10_000, 100_000].map((step) => ({
    maximumOhm: firstOhm * step,
    resolutionOhm: firstResolutionOhm < 1 ? step / Math.round(1 / firstResolutionOhm) : step * firstResolutionOhm,
  }))

const leadSource: Source = {
  title: 'Multimeter manuals: resistance of the test leads',
  clause: '0.1 to 0.2 Ω',
  evidence: 'retrieved',
}
const leads = { leadOhm: 0.15, leadSpreadOhm: 0.05, leadSource } as const

const coarsest: MeterSpec = {
  id: 'budget-multimeter',
  name: 'Budget multimeter',
  percent: 0.8,
  digits: 5,
  ranges: decades(400, 0.1),
  ...leads,
  source: {
    title: 'Manual of a budget digital multimeter',
    clause: 'resistance, 400 Ω range: ±(0.8 % + 5 digits), 0.1 Ω; ranges up to 40 MΩ from memory',
    evidence: 'retrieved',
  },
}

/** The meters a bench may hold. */
export const meters: readonly MeterSpec[] = Object.freeze([
  coarsest,
  {
    id: 'mid-multimeter',
    name: 'Middling multimeter',
    percent: 1,
    digits: 3,
    ranges: decades(400, 0.1),
    ...leads,
    source: {
      title: 'Manual of a mid-priced digital multimeter',
      clause: 'resistance, 400 Ω range: ±(1 % + 3 counts), 0.1 Ω; ranges up to 40 MΩ from memory',
      evidence: 'retrieved',
    },
  },
  {
    id: 'four-digit-multimeter',
    name: 'Four-digit multimeter',
    percent: 0.2,
    digits: 2,
    ranges: decades(100, 0.01),
    ...leads,
    source: {
      title: 'Usual specification of four-digit multimeters',
      clause: '±(0.2 % + 2 digits), 0.01 Ω',
      evidence: 'from memory',
    },
  },
])

/** The specification of an instrument; the budget meter's for one that is not known here, as the least to be relied on. */
export const meterSpec = (id: string): MeterSpec => meters.find((meter) => meter.id === id) ?? coarsest
