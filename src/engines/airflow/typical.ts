import { hoseFriction } from '../../facts/air-losses.ts'
import type { LogNormal } from '../../facts/air-faults.ts'
import { gauges, toneGauge, toneSpeed, vaneAtHose, vaneGauge } from '../../facts/gauges.ts'
import { airPowerGrades, suctionClasses } from '../../facts/suction-classes.ts'
import type { Instrument } from './fit-schema.ts'
import { hoseLoss } from './losses.ts'
import type { FanCurve } from './schema.ts'

/** The instruments of facts/gauges.ts, ready for a fit. */
export const usualInstruments: readonly Instrument[] = [
  ...gauges.map(({ id, gain, stepPa, repeatability, fullScalePa }): Instrument => ({
    id,
    measures: 'suction',
    gain,
    step: stepPa,
    repeatability,
    fullScale: fullScalePa,
  })),
  {
    id: vaneGauge,
    measures: 'airflow',
    gain: vaneAtHose.gain,
    step: 0,
    repeatability: vaneAtHose.repeatability,
    fullScale: null,
  },
  {
    id: toneGauge,
    measures: 'speed',
    gain: toneSpeed.gain,
    step: 0,
    repeatability: toneSpeed.repeatability,
    fullScale: null,
  },
]

/** Two-sided 95 % limits of a normal distribution, in standard deviations apart. */
const limitsApart = 2 * 1.96

/** The log-normal figure of which low and high are the 95 % limits. */
const between = (low: number, high: number): LogNormal => ({
  median: Math.sqrt(low * high),
  sigma: Math.log(high / low) / limitsApart,
})

/** A fan for a machine of which only the kind is known: curve at the medians, and how far sealed suction and open airflow spread. */
export type TypicalFan = { readonly curve: FanCurve; readonly sealedSigma: number; readonly openSigma: number }

/** The fan of a kind of machine in facts/suction-classes.ts; null for a kind that is not there. */
export const typicalFan = (classId: string): TypicalFan | null => {
  const found = suctionClasses.find(({ id }) => id === classId)
  if (found === undefined) return null
  const sealed = between(...found.sealedPa)
  const open = between(...found.openM3PerS)
  return {
    curve: { kind: 'power', sealedPa: sealed.median, openM3PerS: open.median, exponent: 1 },
    sealedSigma: sealed.sigma,
    openSigma: open.sigma,
  }
}

/** Quadratic loss of a vacuum hose by its make, Pa/(m³/s)², with the spread of its friction factor. */
export const typicalHose = (make: 'stretch' | 'smoothLined', diameterM: number, lengthM: number): LogNormal => {
  const { low, usual, high } = hoseFriction[make]
  return { median: hoseLoss(diameterM, lengthM, usual), sigma: between(low, high).sigma }
}

/** Grade of a peak air power over that of the same machine when sound. */
export const airPowerGrade = (ratio: number): 'good' | 'fair' | 'investigate' | 'fail' => {
  const { good, fair, investigate } = airPowerGrades
  if (ratio >= good) return 'good'
  if (ratio >= fair) return 'fair'
  return ratio >= investigate ? 'investigate' : 'fail'
}
