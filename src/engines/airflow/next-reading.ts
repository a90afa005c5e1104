import type { AirFit, AirParameter } from './fit-schema.ts'
import { instrumentOf, logsAt, readingSigma, spreadOf, type HypothesisFit } from './hypothesis-fit.ts'
import { makePredictor } from './predict.ts'

/** What a reading that was not made yet would tell. */
export type NextReading = {
  readonly id: string
  readonly name: string
  readonly minutes: number
  /** Expected information about which of the two leading explanations holds, in bits: 0 to 1. */
  readonly betweenLeadingBits: number
  /** The same about all explanations. */
  readonly bits: number
  /** What it would show under each explanation, likeliest explanation first, with its standard deviation. */
  readonly expected: readonly { readonly hypothesis: string; readonly value: number; readonly sigma: number }[]
  /** False when the instrument would be at its end under one of the two leading explanations. */
  readonly inRange: boolean
}

type Bell = { readonly mean: number; readonly sigma: number; readonly weight: number }

/**
 * The candidates, most telling between the two leading explanations first. Each explanation expects a normal distribution about what its
 * likeliest machine shows; the information is the entropy of their mixture less the mean of their own (mutual information).
 */
export const nextReadings = (
  fit: AirFit,
  parameters: readonly AirParameter[],
  fits: readonly HypothesisFit[],
  probabilities: readonly number[],
): readonly NextReading[] => {
  const { candidates } = fit
  if (candidates.length === 0) return []
  const predictor = makePredictor(fit, parameters, candidates)
  const order = fits.map((_, i) => i).sort((a, b) => probabilities[b] - probabilities[a])
  const predicted = order.map((i) => ({
    fit: fits[i],
    weight: probabilities[i],
    predictions: predictor.predict(logsAt(fits[i].scaling, fits[i].z)),
  }))
  const told = candidates.map(({ id, name, minutes, instrument: used }, c): NextReading => {
    const instrument = instrumentOf(fit, used)
    const bells = predicted.flatMap(({ fit: { hypothesis, scaling, covariance }, weight, predictions }) => {
      const prediction = predictions[c]
      if (prediction === null) return []
      const row = prediction.gradient.map((d, i) => d * scaling.sigma[i])
      const sigma = Math.hypot(
        readingSigma(instrument, prediction.value),
        Math.sqrt(Math.max(0, spreadOf(row, covariance))),
      )
      return [{ hypothesis: hypothesis.id, mean: prediction.value, sigma: Math.max(sigma, 1e-12), weight }]
    })
    const leading = bells.slice(0, 2)
    return {
      id,
      name,
      minutes,
      betweenLeadingBits: informationBits(leading),
      bits: informationBits(bells),
      expected: bells.map(({ hypothesis, mean, sigma }) => ({ hypothesis, value: mean, sigma })),
      inRange: instrument.fullScale === null || leading.every(({ mean }) => mean < (instrument.fullScale ?? mean)),
    }
  })
  return told.sort((a, b) => b.betweenLeadingBits - a.betweenLeadingBits || b.bits - a.bits || a.minutes - b.minutes)
}

const reach = 6
const pointsPerSigma = 8
const fewestPoints = 200
const mostPoints = 4000

/** Mutual information in bits between which bell holds and what is read, by the rectangle rule on an even grid. */
export const informationBits = (given: readonly Bell[]): number => {
  const total = given.reduce((sum, { weight }) => sum + weight, 0)
  const bells = given.map((bell) => ({ ...bell, weight: bell.weight / total })).filter(({ weight }) => weight > 1e-6)
  if (bells.length < 2) return 0
  const low = Math.min(...bells.map(({ mean, sigma }) => mean - reach * sigma))
  const high = Math.max(...bells.map(({ mean, sigma }) => mean + reach * sigma))
  const narrowest = Math.min(...bells.map(({ sigma }) => sigma))
  const wanted = Math.ceil(((high - low) / narrowest) * pointsPerSigma)
  const points = Math.min(mostPoints, Math.max(fewestPoints, wanted))
  const step = (high - low) / points
  let bits = 0
  for (let i = 0; i < points; i++) {
    const x = low + (i + 0.5) * step
    const densities = bells.map(
      ({ mean, sigma }) => Math.exp(-0.5 * ((x - mean) / sigma) ** 2) / (sigma * Math.sqrt(2 * Math.PI)),
    )
    const mixture = densities.reduce((sum, density, k) => sum + bells[k].weight * density, 0)
    densities.forEach((density, k) => {
      if (density > 0) bits += bells[k].weight * density * Math.log2(density / mixture) * step
    })
  }
  return Math.max(0, bits)
}
