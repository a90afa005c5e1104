import type { InstrumentFunction, Measures } from '../../facts/test-instruments.ts'
import type { Measurand } from './amount-text.ts'
import type { Contribution } from './uncertainty.ts'

/** What an instrument showed: a figure, or that the thing lies above or below what it can show. */
export type Reading = {
  readonly shown: 'figure' | 'above' | 'below'
  readonly value: number
  /** The most that the range in use shows, where it was set by hand; null when the instrument chose. */
  readonly rangeMaximum: number | null
  /** The test voltage that was set; null where it is not known or does not apply. */
  readonly testVoltageV: number | null
}

/** A reading with the leads taken off, and what is not known about it. */
export type Corrected = {
  readonly value: number
  readonly contributions: readonly Contribution[]
}

type Range = InstrumentFunction['ranges'][number]

/** What must be measured to judge a quantity. */
export const measuresFor = (quantity: Measurand): Measures => {
  switch (quantity) {
    case 'earth-continuity':
    case 'insulation':
    case 'resistance':
      return 'resistance'
    case 'plug-pin-voltage':
      return 'voltage'
    case 'protective-conductor-current':
    case 'touch-current':
    case 'substitute-leakage':
      return quantity
  }
}

/** The range a reading was taken on; undefined when it lies beyond all that the instrument shows. */
export const rangeOf = (used: InstrumentFunction, reading: Reading): Range | undefined => {
  if (reading.rangeMaximum !== null) {
    const set = used.ranges.find((range) => range.maximum === reading.rangeMaximum)
    return set !== undefined && reading.value <= set.maximum ? set : undefined
  }
  return used.ranges.find((range) => reading.value <= range.maximum)
}

/** Half-width of the rectangle that the specification leaves around a figure shown on a range. */
const specificationLimits = (used: InstrumentFunction, shown: number, range: Range): readonly Contribution[] => {
  const { accuracy } = used
  switch (accuracy.kind) {
    case 'specification': {
      // A specification with no digits leaves out the rounding of the last place.
      const steps = accuracy.digits > 0 ? accuracy.digits : 0.5
      const halfWidth = (accuracy.percent / 100) * Math.abs(shown) + steps * range.resolution
      return [{ name: 'specification of the instrument', distribution: 'rectangular', halfWidth }]
    }
    case 'absolute':
      return [
        { name: 'specification of the instrument', distribution: 'rectangular', halfWidth: accuracy.plusMinus },
        { name: 'last place', distribution: 'rectangular', halfWidth: range.resolution / 2 },
      ]
    case 'operating-uncertainty': {
      const expanded = (accuracy.percent / 100) * Math.abs(shown)
      return [
        { name: 'operating uncertainty of the instrument', distribution: 'normal', expanded, coverageFactor: 2 },
        { name: 'last place', distribution: 'rectangular', halfWidth: range.resolution / 2 },
      ]
    }
  }
}

/** Takes the leads off and lists what is not known. Nothing measured is below zero. */
export const correct = (used: InstrumentFunction, shown: number, range: Range): Corrected => {
  const specification = specificationLimits(used, shown, range)
  const { leads } = used
  if (leads === null) return { value: shown, contributions: specification }
  const spread = { name: 'test leads', distribution: 'rectangular', halfWidth: leads.spreadOhm } as const
  const value = leads.kind === 'subtract' ? Math.max(0, shown - leads.ohm) : shown
  return { value, contributions: [...specification, spread] }
}
