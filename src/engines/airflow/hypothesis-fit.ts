import { CholeskyDecomposition, Matrix } from 'ml-matrix'
import type { AirFit, AirHypothesis, AirParameter, AirReading, Instrument } from './fit-schema.ts'
import { leastSquares, type Residuals } from './least-squares.ts'
import { plateUncertainty } from './plate.ts'
import type { Predictor } from './predict.ts'

/** Where a coordinate lies before any reading: its logarithm is `middle` + `sigma` · z, z standard normal. */
export type Scaling = { readonly middle: Float64Array; readonly sigma: Float64Array }

/** The likeliest machine under one explanation, in standard normal coordinates, and how well it is known. */
export type HypothesisFit = {
  readonly hypothesis: AirHypothesis
  readonly scaling: Scaling
  readonly z: readonly number[]
  /** Covariance of z after the readings; 1 on the diagonal means nothing was learned. */
  readonly covariance: readonly (readonly number[])[]
  /** Natural logarithm of the probability density of all readings together (Laplace). */
  readonly logEvidence: number
  readonly chiSquared: number
  /** For each reading: what the likeliest machine would show, and how many sigma the reading is from what the others lead to expect. */
  readonly readings: readonly { readonly id: string; readonly predicted: number; readonly sigma: number }[]
  readonly settled: boolean
}

/** Twelve standard deviations of a prior: wide enough for a prior that is badly off, and the arithmetic stays in range. */
const bound = 12
/** What a reading that cannot be predicted counts, in sigma. */
const hopeless = 1e3

/** Medians and spreads of all coordinates under an explanation: parameters, then plates, then instruments. */
export const scalingOf = (fit: AirFit, parameters: readonly AirParameter[], hypothesis: AirHypothesis): Scaling => {
  const priors = parameters.map(({ id, prior }) => hypothesis.priors[id] ?? prior)
  const rig = [...fit.plates.map(plateUncertainty), ...fit.instruments.map(({ gain }) => gain)]
  return {
    middle: Float64Array.from([...priors.map(({ median }) => Math.log(median)), ...rig.map(() => 0)]),
    sigma: Float64Array.from([...priors.map(({ sigma }) => sigma), ...rig]),
  }
}

export const logsAt = ({ middle, sigma }: Scaling, z: ArrayLike<number>): Float64Array =>
  middle.map((value, i) => value + sigma[i] * z[i])

/** Standard deviation of one reading of this size, the instrument's gain left out. */
export const readingSigma = ({ step, repeatability }: Instrument, value: number): number =>
  Math.hypot(step, repeatability * value)

/** The instrument of this id. Throws when there is none: the door has refused that. */
export const instrumentOf = (fit: AirFit, id: string): Instrument => {
  const found = fit.instruments.find((one) => one.id === id)
  if (found === undefined) throw new RangeError(`no instrument ${id}`)
  return found
}

/** Residuals in sigma: one for each reading, then each coordinate's own distance from its prior. */
export const makeResiduals = (
  predictor: Predictor,
  scaling: Scaling,
  readings: readonly AirReading[],
  sigmas: readonly number[],
) => {
  const own = Array.from(scaling.sigma, (_, i) => Array.from(scaling.sigma, (_, j) => (i === j ? 1 : 0)))
  const lost = new Array<number>(scaling.sigma.length).fill(0)
  return (z: ArrayLike<number>): Residuals => {
    const predictions = predictor.predict(logsAt(scaling, z))
    const values = new Float64Array(readings.length + own.length)
    const rows: ArrayLike<number>[] = predictions.map((prediction, i) => {
      values[i] = prediction === null ? hopeless : (prediction.value - readings[i].value) / sigmas[i]
      return prediction === null ? lost : Array.from(prediction.gradient, (d, j) => (d * scaling.sigma[j]) / sigmas[i])
    })
    for (let j = 0; j < own.length; j++) values[readings.length + j] = z[j]
    return { values, rows: [...rows, ...own] }
  }
}

/**
 * The machine that is likeliest under an explanation, given the readings (maximum a posteriori), with the Laplace approximation about it:
 * covariance and evidence from the Gauss–Newton Hessian I + JᵀJ.
 */
export const fitHypothesis = (
  fit: AirFit,
  parameters: readonly AirParameter[],
  hypothesis: AirHypothesis,
  predictor: Predictor,
): HypothesisFit => {
  const { readings } = fit
  const scaling = scalingOf(fit, parameters, hypothesis)
  const sigmas = readings.map(({ instrument, value }) => readingSigma(instrumentOf(fit, instrument), value))
  const residuals = makeResiduals(predictor, scaling, readings, sigmas)
  const start = Array.from(scaling.sigma, () => 0)
  const { at, halfSum, settled } = leastSquares(residuals, start, bound)
  const { values, rows } = residuals(at)
  const data = rows.slice(0, readings.length).map((row) => Array.from(row))
  const { covariance, logDeterminant } = curvature(data, start.length)
  const logNorm = sigmas.reduce((sum, sigma) => sum + Math.log(sigma * Math.sqrt(2 * Math.PI)), 0)
  return {
    hypothesis,
    scaling,
    z: at,
    covariance,
    logEvidence: -halfSum - logDeterminant / 2 - logNorm,
    chiSquared: values.slice(0, readings.length).reduce((sum, value) => sum + value * value, 0),
    readings: readings.map(({ id, value }, i) => ({
      id,
      predicted: value + values[i] * sigmas[i],
      sigma: deletionSigma(-values[i], data[i], covariance),
    })),
    settled,
  }
}

/** Inverse and logarithm of the determinant of I + JᵀJ. */
const curvature = (rows: readonly number[][], size: number) => {
  const hessian = Matrix.eye(size)
  if (rows.length > 0) {
    const j = new Matrix(rows)
    hessian.add(j.transpose().mmul(j))
  }
  const cholesky = new CholeskyDecomposition(hessian)
  const logDeterminant = 2 * cholesky.lowerTriangularMatrix.diagonal().reduce((sum, value) => sum + Math.log(value), 0)
  const inverse = cholesky.solve(Matrix.eye(size))
  // Rounding leaves the two halves apart in the last digit.
  const covariance = Matrix.add(inverse, inverse.transpose()).div(2).to2DArray()
  return { covariance, logDeterminant }
}

/** Variance of a linear function of z. */
export const spreadOf = (row: ArrayLike<number>, covariance: readonly (readonly number[])[]): number => {
  let sum = 0
  for (let i = 0; i < row.length; i++) {
    if (row[i] === 0) continue
    for (let j = 0; j < row.length; j++) sum += row[i] * covariance[i][j] * row[j]
  }
  return sum
}

/** A residual over what it would be without its own pull: its distance from what the other readings lead to expect. */
const deletionSigma = (residual: number, row: ArrayLike<number>, covariance: readonly (readonly number[])[]): number =>
  residual / Math.sqrt(Math.max(1e-9, 1 - spreadOf(row, covariance)))
