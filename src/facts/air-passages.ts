import type { Source } from '../base/source.ts'
import type { LogNormal } from './air-faults.ts'

/** A kind of passage that the air of a vacuum cleaner goes through, clean and as it is found when loaded or blocked. */
export type AirPassage = {
  readonly name: string
  /** Pressure lost when clean, at {@link passageAirflow}. */
  readonly lossPa: number
  /** Share of that loss that goes with the airflow; the rest goes with its square. */
  readonly linearShare: number
  /** Spread of the clean loss between machines of a kind: standard deviation of its natural logarithm. */
  readonly spread: number
  /** Multiple of the clean loss when it is loaded or blocked. */
  readonly loaded: LogNormal
  /** Whether it can be left out for a reading, as a bag or a filter can. */
  readonly comesOut: boolean
  readonly source: Source
}

/** The airflow at which clean losses are given, m³/s. */
export const passageAirflow = 0.03

/** Published rows of loaded bags are 14 to 23 times clean; one in twenty lies outside 5 to 45. */
const loadedMedium: LogNormal = { median: 15, sigma: 0.55 }
/** A thing stuck in a passage leaves a half to a fifth of its width. */
const stuck: LogNormal = { median: 6, sigma: 0.8 }

const judged = (title: string): Source => ({ title, evidence: 'judgement' })

/**
 * Passages by kind. How the loss splits into a linear and a square part follows from its exponent in airflow (felt and paper 1.0 to 1.2,
 * pleats 1.0 to 1.15, foam 1.2 to 1.5, cyclone 1.9 to 2; from memory), so that both have the same slope at the airflow given.
 */
export const airPassages = {
  'paper-bag': {
    name: 'paper bag',
    lossPa: 100,
    linearShare: 0.9,
    spread: 0.5,
    loaded: loadedMedium,
    comesOut: true,
    source: {
      title: 'Bag medium of 300 L/(s m²) at 200 Pa, 0.2 m²: 0.1 kPa at 30 L/s clean',
      url: 'https://patents.justia.com/patent/6171369',
      evidence: 'derived',
    },
  },
  'cloth-bag': {
    name: 'cloth bag',
    lossPa: 120,
    linearShare: 0.9,
    spread: 0.5,
    loaded: loadedMedium,
    comesOut: false,
    source: judged('Cloth outer bag, brushed out, about as a paper bag'),
  },
  'foam-filter': {
    name: 'foam or felt filter',
    lossPa: 200,
    linearShare: 0.65,
    spread: 0.5,
    loaded: loadedMedium,
    comesOut: true,
    source: judged('Pre-motor filter of foam or felt, washed: 0.1 to 0.4 kPa at 30 L/s'),
  },
  'pleated-filter': {
    name: 'pleated filter',
    lossPa: 300,
    linearShare: 0.9,
    spread: 0.5,
    loaded: loadedMedium,
    comesOut: true,
    source: judged('Pleated exhaust filter, new: 0.15 to 0.6 kPa at 30 L/s'),
  },
  cyclone: {
    name: 'cyclone',
    lossPa: 2500,
    linearShare: 0.05,
    spread: 0.4,
    loaded: { median: 3, sigma: 0.6 },
    comesOut: false,
    source: judged('Cyclone of a household machine with its shroud: 1.5 to 4 kPa at 30 L/s'),
  },
  duct: {
    name: 'duct',
    lossPa: 900,
    linearShare: 0,
    spread: 0.4,
    loaded: stuck,
    comesOut: false,
    source: judged('Moulded duct of 35 mm and 0.8 m with three bends: friction 0.03, 0.3 for each bend'),
  },
  'fill-tube': {
    name: 'fill tube',
    lossPa: 210,
    linearShare: 0,
    spread: 0.4,
    loaded: stuck,
    comesOut: false,
    source: judged('Fill tube of 50 mm and 0.5 m with its bends'),
  },
} as const satisfies Readonly<Record<string, AirPassage>>

export type AirPassageId = keyof typeof airPassages

/** A hose with something stuck in it, as a multiple of its clean loss. */
export const blockedHose: LogNormal = stuck

/** What the air still meets where a bag or filter was left out: the empty frame. */
export const emptyFrame = {
  lossPa: 9,
  source: judged('Frame of a bag or filter without it: next to nothing at 30 L/s'),
} as const
