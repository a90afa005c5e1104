import type { Source } from '../base/source.ts'

const flowMeterLibrary = 'https://github.com/CalebBell/fluids/blob/master/fluids/flow_meter.py'

/** Discharge coefficient of an orifice plate between two lengths of pipe: Reader-Harris/Gallagher. */
export const readerHarrisGallagher = {
  base: 0.5961,
  beta2: 0.0261,
  beta8: 0.216,
  reynolds: 0.000521,
  small: { constant: 0.0188, perA: 0.0063 },
  upstream: { constant: 0.043, fast: 0.08, medium: 0.123, perA: 0.11 },
  downstream: { constant: 0.031, factor: 0.8 },
  /** Added below 71.12 mm of pipe. */
  smallPipe: { limitM: 0.07112, factor: 0.011, beta: 0.75, from: 2.8 },
  source: {
    title: 'ISO 5167-2:2003 as coded in a general-purpose library; the factor of the small-pipe term from memory',
    url: flowMeterLibrary,
    evidence: 'retrieved',
  } as Source,
} as const

/** Expansibility of an orifice, ISO 5167-2:2003: 1 − (a + bβ⁴ + cβ⁸)(1 − (p2/p1)^(1/κ)), fitted for p2/p1 ≥ 0.80. */
export const expansibility2003 = {
  a: 0.351,
  b: 0.256,
  c: 0.93,
  lowestRatio: 0.8,
  source: {
    title: 'ISO 5167-2:2003 as coded in a general-purpose library',
    url: flowMeterLibrary,
    evidence: 'retrieved',
  } as Source,
} as const

/** Expansibility of the 1989 edition: 1 − (a + bβ⁴) Δp/(κ p1). */
export const expansibility1989 = {
  a: 0.41,
  b: 0.35,
  source: {
    title: 'ISO 5167:1989 as coded in a general-purpose library',
    url: flowMeterLibrary,
    evidence: 'retrieved',
  },
} as const satisfies { readonly source: Source; readonly [key: string]: unknown }

/** What the meter-run formulas were fitted for. */
export const meterRunLimits = {
  smallestHoleM: 0.0125,
  pipeM: [0.05, 1],
  beta: [0.1, 0.75],
  lowestReynolds: 5000,
  source: {
    title: 'Limits of ISO 5167-2 as documented in a general-purpose library',
    url: flowMeterLibrary,
    evidence: 'retrieved',
  } as Source,
} as const

/**
 * A sharp hole in a large wall. Household test holes run at throat Reynolds numbers of 40,000 to 100,000, where the formula above
 * gives 0.599 to 0.601 for a vanishing diameter ratio.
 */
export const freeHole = {
  discharge: 0.6,
  source: {
    title: 'Reader-Harris/Gallagher for a vanishing diameter ratio at household Reynolds numbers',
    evidence: 'derived',
  } as Source,
} as const

/** Loss of a thick-edged hole in a large wall against thickness over diameter; free discharge has Cd = ζ^−½. */
export const thickHole = {
  constant: 0.183,
  full: 1.622,
  short: 0.387,
  reattachment: 1.4,
  half: 0.5,
  powers: [2.5, 3, 4.5],
  /** Up to here thickness is worth less than 1 % of the flow. */
  thinUpTo: 0.2,
  /** Beyond this the hole is a short tube and the formula ends. */
  upTo: 1.4,
  source: {
    title: 'Handbook formula for thick-edged orifices; used for free discharge as Cd = ζ^−½ (derived)',
    url: 'https://eng-calculations.com/Hydraulic_engineering/Entrances/thick-edged_orifice',
    evidence: 'retrieved',
  } as Source,
} as const

/**
 * A rounded inlet edge. Contraction loss as 0.47 · 10^(−7.7 r/d) (bell-mouthed entrance, from memory); the scale is set so that a
 * sharp edge gives the sharp coefficient, and a well rounded one the published 0.97.
 */
export const roundedHole = {
  limit: 0.97,
  loss: 0.47,
  decay: 7.7,
  source: {
    title: 'Table of discharge of air through orifices: rounded entrance 0.97',
    url: 'https://www.scribd.com/document/697985333/Discharge-of-Air-Thru-Orifice',
    evidence: 'retrieved',
  } as Source,
  shapeSource: { title: 'Loss of a rounded entrance against radius over diameter', evidence: 'from memory' } as Source,
} as const

/** How the hole was made, and the relative standard uncertainty of its flow besides that of its diameter. */
export const holeMakes = {
  machined: { uncertainty: 0.015, name: 'machined plate' },
  'drilled-sheet': { uncertainty: 0.03, name: 'drilled in sheet of 1 to 3 mm, deburred, measured by calliper' },
  'board-or-cap': { uncertainty: 0.06, name: 'drilled in board or a plastic cap' },
  unknown: { uncertainty: 0.1, name: 'not known' },
} as const
export const holeUncertainty = {
  /** Of a calliper across a hole. */
  diameterM: 0.1e-3,
  source: { title: 'Uncertainty of drilled test holes', evidence: 'judgement' } as Source,
} as const

/** Below this suction, and below this hole, coefficients leave 0.60: weak evidence. */
export const weakHole = {
  belowM: 0.0095,
  belowPa: 1250,
  source: {
    title: 'Customary coefficients of test plates against the physical ones: apart below 3/8 in and 5 inH2O',
    evidence: 'derived',
  } as Source,
} as const
