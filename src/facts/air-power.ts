import type { Source } from '../base/source.ts'

const fromMemory: Source = {
  title: 'American method for air performance of vacuum cleaners; based on it, not checked against a copy',
  edition: 'ASTM F558',
  evidence: 'from memory',
}

/** Customary American constants of air data: feet, pounds, inches of water, °F, inHg. */
export const americanAirData = {
  /** W per (cfm · inH2O). */
  airPower: 0.117354,
  /** cfm per in² · √inH2O, for a coefficient of 1 and air of 0.075 lb/ft³. */
  flow: 21.844,
  psiPerInH2O: 0.03607,
  psiPerInHg: 0.4912,
  suctionExponent: 0.667,
  powerExponent: 0.5,
  densityRatio: {
    barometer: 17.68,
    wetSquared: -0.001978,
    wet: 0.1064,
    depression: 0.0024575,
    constant: -2.741,
    zeroF: 459.7,
  },
  source: fromMemory,
} as const

/** Plate coefficient K1 = (A r − B)/(r − C), r = pressure behind the plate over barometer; diameter in inches. */
export const americanPlates: readonly {
  readonly diameterIn: number
  readonly abc: readonly [number, number, number]
}[] = Object.freeze([
  { diameterIn: 0.25, abc: [0.5575, 0.5955, 1.0468] },
  { diameterIn: 0.375, abc: [0.5553, 0.5754, 1.0263] },
  { diameterIn: 0.5, abc: [0.5694, 0.5786, 1.0138] },
  { diameterIn: 0.625, abc: [0.5692, 0.5767, 1.0104] },
  { diameterIn: 0.75, abc: [0.5715, 0.5807, 1.0138] },
  { diameterIn: 0.875, abc: [0.574, 0.5841, 1.0158] },
  { diameterIn: 1, abc: [0.5687, 0.5785, 1.0146] },
  { diameterIn: 1.125, abc: [0.5675, 0.5819, 1.0225] },
  { diameterIn: 1.25, abc: [0.5717, 0.5814, 1.0152] },
  { diameterIn: 1.375, abc: [0.568, 0.5826, 1.0235] },
  { diameterIn: 1.5, abc: [0.5719, 0.582, 1.0165] },
  { diameterIn: 1.75, abc: [0.5695, 0.5839, 1.0235] },
  { diameterIn: 2, abc: [0.5757, 0.5853, 1.0157] },
  { diameterIn: 2.25, abc: [0.5709, 0.5878, 1.0279] },
  { diameterIn: 2.5, abc: [0.566, 0.59024, 1.04] },
])

/** Exponents with which suction and input power are brought to standard density in the metric method. */
export const metricAirData = {
  suctionExponent: 0.67,
  powerExponent: 0.5,
  source: {
    title: 'Metric method for air data of vacuum cleaners; based on it, not checked against a copy',
    edition: 'IEC 60312-1',
    evidence: 'from memory',
  } as Source,
} as const

/** Points that the parabola of air power against airflow is laid through: those around the largest. */
export const peakPoints = {
  count: 5,
  source: fromMemory,
} as const
