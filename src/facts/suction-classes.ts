import type { Source } from '../base/source.ts'

/** Suction with nothing flowing, and airflow with nothing in the way, of kinds of machine. Lows and highs span what was quoted. */
export type SuctionClass = {
  readonly id: string
  readonly name: string
  readonly sealedPa: readonly [number, number]
  readonly openM3PerS: readonly [number, number]
  readonly source: Source
}

const recalled: Source = { title: 'Usual ranges of suction and airflow by kind', evidence: 'from memory' }

export const suctionClasses: readonly SuctionClass[] = Object.freeze([
  {
    id: 'cylinder',
    name: 'cylinder',
    sealedPa: [18_000, 28_000],
    openM3PerS: [0.03, 0.042],
    source: recalled,
  },
  {
    id: 'by-pass-upright',
    name: 'upright, clean air through the fan',
    sealedPa: [15_000, 22_000],
    openM3PerS: [0.022, 0.032],
    source: recalled,
  },
  {
    id: 'direct-air-upright',
    name: 'upright, dirty air through the fan',
    sealedPa: [6_500, 9_500],
    openM3PerS: [0.05, 0.065],
    source: {
      title: 'Discussion of direct-air and by-pass uprights: about 32 inH2O and 127 to 130 cfm',
      url: 'https://vacuumland.org/threads/direct-air-vs-bypass-air-confusion.32982/post-362022',
      clause: 'the spread about it by judgement',
      evidence: 'retrieved',
    },
  },
  {
    id: 'tub',
    name: 'tub or shop',
    sealedPa: [12_500, 25_000],
    openM3PerS: [0.042, 0.06],
    source: {
      title: 'Shop vacuum guidance: at least 50 inH2O; less than 90 cfm is not very effective',
      url: 'http://www.thisoldhouse.com/toh/photos/0,,20398648_20806399,00.html',
      clause: 'the upper ends by judgement',
      evidence: 'retrieved',
    },
  },
  {
    id: 'stick',
    name: 'stick',
    sealedPa: [8_000, 25_000],
    openM3PerS: [0.012, 0.022],
    source: recalled,
  },
])

/** No fan of a household machine sucks more: twice the strongest quoted (27.4 kPa). Above it a reading is a slip or a wrong unit. */
export const strongestSuction = {
  pressurePa: 55_000,
  source: {
    title: 'Twice the strongest sealed suction quoted for a household machine',
    evidence: 'judgement',
  } as Source,
} as const

/** Peak air power over that of the same machine when sound. */
export const airPowerGrades = {
  good: 0.9,
  fair: 0.75,
  investigate: 0.6,
  source: { title: 'Grading of air power against the model’s own reference', evidence: 'judgement' } as Source,
} as const
