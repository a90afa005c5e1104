import type { Random } from '../../base/random.ts'
import type { MeterRange, MeterSpec } from '../../facts/meters.ts'
import { normalAbove, normalBetween, normalDensity } from './normal.ts'

export type { MeterRange, MeterSpec } from '../../facts/meters.ts'

/** What is expected between the probe tips: resistance (Infinity when open) and its standard deviation from the parts' spread. */
export type PredictedOhm = { readonly resistanceOhm: number; readonly sdOhm: number }

export type SampledReading = { readonly kind: 'ohms'; readonly resistanceOhm: number } | { readonly kind: 'open' }

/*
 * A reading r is looked at as y = ln(r + floor). Far above the floor that is a logarithmic scale, on which a spread in per
 * cent is the same everywhere; well below it, a linear one, on which a spread in last digits is. So one normal density
 * in y serves 0.2 Ω and 10 kΩ. It is cut off at r = 0, because no meter shows less, and what lies above the largest
 * range shows as open.
 */

/** Contact of tips and leads is never better known than this, in ohm. Judgement, after the spread of lead resistances. */
const leastFloorOhm = 0.3

const floorOhm = (spec: MeterSpec): number => Math.max(leastFloorOhm, spec.digits * spec.ranges[0].resolutionOhm)

const largestOhm = (spec: MeterSpec): number => spec.ranges.at(-1)!.maximumOhm

/** The range an auto-ranging meter settles on; the largest one for anything beyond. */
const rangeAt = (spec: MeterSpec, resistanceOhm: number): MeterRange =>
  spec.ranges.find((range) => resistanceOhm <= range.maximumOhm) ?? spec.ranges.at(-1)!

/**
 * Standard uncertainty of a shown resistance, in ohm: the instrument's limits and the spread of its leads, each taken as
 * rectangular, u = a / √3 (GUM, JCGM 100:2008, 4.3.7), added in squares.
 */
export const meterUncertaintyOhm = (spec: MeterSpec, shownOhm: number): number => {
  const limitOhm = (spec.percent / 100) * shownOhm + spec.digits * rangeAt(spec, shownOhm).resolutionOhm
  return Math.hypot(limitOhm, spec.leadSpreadOhm) / Math.sqrt(3)
}

const onScale = (spec: MeterSpec, ohm: number): number => Math.log(Math.max(0, ohm) + floorOhm(spec))

/** Mean and standard deviation on the scale y, and the share of the normal curve that lies above r = 0. */
type Curve = { readonly mean: number; readonly sd: number; readonly share: number }

const curveOf = (spec: MeterSpec, { resistanceOhm, sdOhm }: PredictedOhm): Curve => {
  const shownOhm = resistanceOhm + spec.leadOhm
  const mean = onScale(spec, shownOhm)
  const sd = Math.hypot(sdOhm, meterUncertaintyOhm(spec, shownOhm)) / (shownOhm + floorOhm(spec))
  return { mean, sd, share: normalAbove((onScale(spec, 0) - mean) / sd) }
}

/** Probability that the meter shows "open": a reading beyond its largest range. 1 when an infinite resistance is predicted. */
export const openProbability = (spec: MeterSpec, predicted: PredictedOhm): number => {
  if (!Number.isFinite(predicted.resistanceOhm)) return 1
  const { mean, sd, share } = curveOf(spec, predicted)
  return normalAbove((onScale(spec, largestOhm(spec)) - mean) / sd) / share
}

/** Probability that the meter shows a number from `lowOhm` up to `highOhm`. All bands and "open" together make 1. */
export const ohmBandProbability = (
  spec: MeterSpec,
  predicted: PredictedOhm,
  lowOhm: number,
  highOhm: number,
): number => {
  const low = Math.max(0, lowOhm)
  const high = Math.min(highOhm, largestOhm(spec))
  if (!Number.isFinite(predicted.resistanceOhm) || high <= low) return 0
  const { mean, sd, share } = curveOf(spec, predicted)
  return normalBetween((onScale(spec, low) - mean) / sd, (onScale(spec, high) - mean) / sd) / share
}

/** Probability density of a shown number, per unit of y = ln(r + floor). Its integral over the meter's span is 1 − open. */
export const ohmDensity = (spec: MeterSpec, predicted: PredictedOhm, readOhm: number): number => {
  if (!Number.isFinite(predicted.resistanceOhm) || readOhm < 0 || readOhm > largestOhm(spec)) return 0
  const { mean, sd, share } = curveOf(spec, predicted)
  return normalDensity((onScale(spec, readOhm) - mean) / sd) / (sd * share)
}

/**
 * Density of a number that has nothing to do with the machine: even over y from 0 Ω to the end of the largest range.
 * The slip likelihood that goes with `ohmDensity`; scale it by the share of slips that end in a number.
 */
export const ohmSlipDensity = (spec: MeterSpec): number => 1 / (onScale(spec, largestOhm(spec)) - onScale(spec, 0))

/** What a virtual meter shows, drawn from the same model and rounded to the resolution of the range it settles on. */
export const sampleOhmReading = (spec: MeterSpec, predicted: PredictedOhm, random: Random): SampledReading => {
  if (!Number.isFinite(predicted.resistanceOhm)) return { kind: 'open' }
  const { mean, sd } = curveOf(spec, predicted)
  const resistanceOhm = drawOhm(mean, sd, floorOhm(spec), random)
  if (resistanceOhm > largestOhm(spec)) return { kind: 'open' }
  return { kind: 'ohms', resistanceOhm: rounded(resistanceOhm, rangeAt(spec, resistanceOhm).resolutionOhm) }
}

/** Draws again below zero; the mean is never below zero, so at least half of all draws count. */
const drawOhm = (mean: number, sd: number, floor: number, random: Random): number => {
  for (;;) {
    const ohm = Math.exp(mean + sd * random.normal()) - floor
    if (ohm >= 0) return ohm
  }
}

/** Divides by a whole number for resolutions below 1 Ω, so that 0.3 comes out as 0.3. */
const rounded = (ohm: number, resolutionOhm: number): number => {
  const steps = Math.round(ohm / resolutionOhm)
  return resolutionOhm < 1 ? steps / Math.round(1 / resolutionOhm) : steps * resolutionOhm
}
