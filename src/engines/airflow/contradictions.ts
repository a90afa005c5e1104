import { contradictionSigma } from '../../facts/air-faults.ts'
import type { AirFit, AirHypothesis, AirParameter, AirReading } from './fit-schema.ts'
import { fitHypothesis, instrumentOf, logsAt, readingSigma, spreadOf, type HypothesisFit } from './hypothesis-fit.ts'
import { makePredictor } from './predict.ts'

/** A reading that no machine shows together with the others. */
export type Unexplained = {
  readonly reading: string
  /** Its distance from what the other readings lead to expect, under the explanation that comes nearest. */
  readonly sigma: number
  /** Whether the others agree with each other once it is left out: if so, it is the one to read again. */
  readonly othersAgree: boolean
  readonly text: string
}

/**
 * Readings that contradict the rest. First by their deletion residuals under every explanation; those beyond three sigma under all are then
 * left out one at a time, and the leading and the widest explanation fitted anew, so that a reading that pulled the fit away does not
 * put the blame on the others. If leaving one out makes the others agree, only such are named. Worst first.
 */
export const contradictions = (
  fit: AirFit,
  parameters: readonly AirParameter[],
  fits: readonly HypothesisFit[],
  tried: readonly AirHypothesis[],
): readonly Unexplained[] => {
  const suspicious = fit.readings.filter((_, i) => fits.every(({ readings }) => isFar(readings[i].sigma)))
  const found = suspicious
    .map((reading) => leftOut(fit, parameters, reading, tried))
    .filter(({ sigma }) => isFar(sigma))
    .sort((a, b) => b.sigma - a.sigma)
  const culprits = found.filter(({ othersAgree }) => othersAgree)
  return culprits.length > 0 ? culprits : found
}

const isFar = (sigma: number): boolean => Math.abs(sigma) >= contradictionSigma.value

const leftOut = (
  fit: AirFit,
  parameters: readonly AirParameter[],
  reading: AirReading,
  tried: readonly AirHypothesis[],
): Unexplained => {
  const others = { ...fit, readings: fit.readings.filter(({ id }) => id !== reading.id) }
  const predictor = makePredictor(fit, parameters, others.readings)
  const refits = tried.map((hypothesis) => fitHypothesis(others, parameters, hypothesis, predictor))
  const sigma = Math.min(...refits.map((refit) => distance(fit, parameters, reading, refit)))
  const othersAgree = refits.some(({ readings }) => !readings.some((other) => isFar(other.sigma)))
  return {
    reading: reading.id,
    sigma,
    othersAgree,
    text: `The reading “${reading.name}” is ${sigma.toFixed(1)} sigma from any machine${othersAgree ? ' that shows the others' : ''}`,
  }
}

/** How far a reading is from what a machine fitted without it would show, in sigma of both together. */
const distance = (
  fit: AirFit,
  parameters: readonly AirParameter[],
  reading: AirReading,
  refit: HypothesisFit,
): number => {
  const { scaling, z, covariance } = refit
  const [prediction] = makePredictor(fit, parameters, [reading]).predict(logsAt(scaling, z))
  if (prediction === null) return Infinity
  const row = prediction.gradient.map((d, i) => d * scaling.sigma[i])
  const own = readingSigma(instrumentOf(fit, reading.instrument), reading.value)
  return Math.abs(reading.value - prediction.value) / Math.hypot(own, Math.sqrt(spreadOf(row, covariance)))
}
