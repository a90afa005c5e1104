import type { Source } from '../base/source.ts'
import { meters, type MeterSpec } from './meters.ts'

/** What a function of an instrument measures. Ohm, ampere, volt. */
export type Measures =
  'resistance' | 'protective-conductor-current' | 'touch-current' | 'substitute-leakage' | 'voltage'

/**
 * How well it measures.
 * `specification`: ± (per cent of the figure shown + digits of its last place). `absolute`: ± so much, in the unit measured.
 * `operating-uncertainty`: per cent of the figure under all conditions of use, already at a coverage factor of two.
 */
export type Accuracy =
  | { readonly kind: 'specification'; readonly percent: number; readonly digits: number }
  | { readonly kind: 'absolute'; readonly plusMinus: number }
  | { readonly kind: 'operating-uncertainty'; readonly percent: number }

/** Test leads: their resistance is taken off the figure, or was nulled before; either way some of it is not known. Ohm. */
export type TestLeads =
  | { readonly kind: 'subtract'; readonly ohm: number; readonly spreadOhm: number }
  | { readonly kind: 'nulled'; readonly spreadOhm: number }

export type InstrumentFunction = {
  readonly measures: Measures
  readonly accuracy: Accuracy
  /** From the smallest up: what it can show at most, and its last place. */
  readonly ranges: readonly { readonly maximum: number; readonly resolution: number }[]
  readonly leads: TestLeads | null
  /** DC volts it puts on insulation; current it drives through a conductor. Null where that does not apply. */
  readonly testVoltageV: number | null
  readonly testCurrentA: number | null
}

export type TestInstrument = {
  readonly id: string
  readonly name: string
  readonly functions: readonly InstrumentFunction[]
  readonly source: Source
}

/** Open-circuit voltage of multimeters on ohms, at most, and what they then drive through a short. */
const ohmmeter = { testVoltageV: 1.2, testCurrentA: 0.001 } as const

const multimeter = (meter: MeterSpec): TestInstrument => ({
  id: meter.id,
  name: meter.name,
  functions: [
    {
      measures: 'resistance',
      accuracy: { kind: 'specification', percent: meter.percent, digits: meter.digits },
      ranges: meter.ranges.map(({ maximumOhm, resolutionOhm }) => ({ maximum: maximumOhm, resolution: resolutionOhm })),
      leads: { kind: 'subtract', ohm: meter.leadOhm, spreadOhm: meter.leadSpreadOhm },
      ...ohmmeter,
    },
  ],
  source: meter.source,
})

/** IEC 61557: its operating uncertainty is the error with 1.15 times the root of the squared influences, thus at about two sigma. */
const operating = { kind: 'operating-uncertainty', percent: 30 } as const

const megohms = [2, 20, 200].map((megohm) => ({ maximum: megohm * 1e6, resolution: megohm * 1e3 }))

const insulationAt = (testVoltageV: number, accuracy: Accuracy): InstrumentFunction => ({
  measures: 'resistance',
  accuracy,
  ranges: megohms,
  leads: null,
  testVoltageV,
  testCurrentA: 0.001,
})

const leakageFunction = (measures: Measures): InstrumentFunction => ({
  measures,
  accuracy: { kind: 'specification', percent: 5, digits: 5 },
  ranges: [{ maximum: 0.02, resolution: 1e-5 }],
  leads: null,
  testVoltageV: null,
  testCurrentA: null,
})

const lowOhm: InstrumentFunction = {
  measures: 'resistance',
  accuracy: { kind: 'specification', percent: 2, digits: 2 },
  ranges: [{ maximum: 39.99, resolution: 0.01 }],
  leads: { kind: 'nulled', spreadOhm: 0.01 },
  testVoltageV: 12.4,
  testCurrentA: 0.2,
}

/** Instruments a bench may hold. Give the specification from the manual of the one in hand where it is there. */
export const testInstruments: readonly TestInstrument[] = Object.freeze([
  ...meters.map(multimeter),
  {
    id: 'low-ohm-tester',
    name: 'Low-ohm continuity tester, 200 mA',
    functions: [lowOhm],
    source: {
      title: 'Manual of a 200 mA continuity tester: over 200 mA, 0.01 to 39.99 Ω, leads nulled',
      clause: 'accuracy ±(2 % + 2 digits) and 0.01 Ω left after nulling from memory',
      url: 'https://manualslib.es/manual/53497/Chauvin-Arnoux-C-A-6541.html?page=57',
      evidence: 'retrieved',
    },
  },
  {
    id: 'insulation-tester',
    name: 'Insulation tester, 250 and 500 V',
    functions: [250, 500].map((volts) => insulationAt(volts, { kind: 'specification', percent: 3, digits: 5 })),
    source: {
      title: 'Data sheet of an insulation tester: 500 V, ±(3 % + 5 digits), 2, 20 and 200 MΩ',
      clause: '250 V with the same figures from memory',
      url: 'https://raw.githubusercontent.com/aymounr2023-ai/-mitutoyo-assets/main/fiches-extech/380360.pdf',
      evidence: 'retrieved',
    },
  },
  {
    id: 'insulation-tester-bare',
    name: 'Insulation tester of which only the standard is known',
    functions: [250, 500].map((volts) => insulationAt(volts, operating)),
    source: {
      title: 'IEC 61557-2, operating uncertainty at most ±30 %',
      clause: '6.2; that it stands at a coverage factor of about two from memory',
      url: 'https://iec.mealir.com/iec-61557-2-2019-pdf-download.html',
      evidence: 'retrieved',
    },
  },
  {
    id: 'leakage-tester',
    name: 'Appliance tester that measures leakage',
    functions: (['protective-conductor-current', 'touch-current', 'substitute-leakage'] as const).map(leakageFunction),
    source: {
      title: 'Usual appliance testers: ±(5 % + 5 digits), 0.01 mA, to 20 mA',
      evidence: 'from memory',
    },
  },
])
