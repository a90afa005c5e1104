import { testInstruments, type InstrumentFunction, type Measures } from '../../facts/test-instruments.ts'
import type { LimitQuantity } from '../../facts/safety-limits.ts'
import type { Quantity } from '../../base/units.ts'

/** How what is measured is written: its units, the usual one first for an amount of this kind. */
const unitsOf = {
  small: { units: ['Ω', 'kΩ', 'MΩ'], usual: 'Ω', quantity: 'resistanceOhm' },
  large: { units: ['kΩ', 'MΩ'], usual: 'MΩ', quantity: 'resistanceOhm' },
  current: { units: ['µA', 'mA'], usual: 'mA', quantity: 'currentA' },
  voltage: { units: ['V'], usual: 'V', quantity: 'voltageV' },
} as const satisfies Record<string, Written>

export type Written = { readonly units: readonly string[]; readonly usual: string; readonly quantity: Quantity }

/** What the instrument must measure, and how it is written down. */
export const measuredAs = (quantity: LimitQuantity): Written & { readonly measures: Measures } => {
  switch (quantity) {
    case 'earth-continuity':
      return { ...unitsOf.small, measures: 'resistance' }
    case 'insulation':
      return { ...unitsOf.large, measures: 'resistance' }
    case 'protective-conductor-current':
    case 'touch-current':
    case 'substitute-leakage':
      return { ...unitsOf.current, measures: quantity }
    case 'plug-pin-voltage':
      return { ...unitsOf.voltage, measures: 'voltage' }
  }
}

const functionsOf = (instrument: string, quantity: LimitQuantity): readonly InstrumentFunction[] =>
  testInstruments
    .filter(({ id }) => id === instrument)
    .flatMap(({ functions }) => functions.filter(({ measures }) => measures === measuredAs(quantity).measures))

/** The test voltages between which an instrument can be set; empty where there is nothing to choose. */
export const voltagesOf = (instrument: string, quantity: LimitQuantity): readonly number[] => {
  const volts = [...new Set(functionsOf(instrument, quantity).flatMap(({ testVoltageV }) => testVoltageV ?? []))]
  return volts.length > 1 ? volts : []
}

/** A text with a letter or a sign for its unit keeps it; a bare number gets the one chosen. */
export const withUnit = (text: string, unit: string): string => (/[^\d\s.,+\-−]/.test(text) ? text : `${text} ${unit}`)
