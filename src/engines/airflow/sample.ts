import { CholeskyDecomposition, Matrix } from 'ml-matrix'
import { seededRandom, type Random } from '../../base/random.ts'
import type { AirFit } from './fit-schema.ts'
import { instrumentOf, makeResiduals, readingSigma, type HypothesisFit } from './hypothesis-fit.ts'
import type { Predictor } from './predict.ts'

/** Draws of z about the likeliest machine, with their weights (sum 1), and the evidence they give. */
export type Sampled = {
  readonly logEvidence: number
  readonly draws: readonly (readonly number[])[]
  readonly weights: readonly number[]
  /** How many independent draws these weighted ones are worth. */
  readonly effectiveDraws: number
}

/** Degrees of freedom of the proposal: heavy enough in the tails for a one-sided posterior. */
const freedom = 5

/**
 * Evidence by importance sampling: draws from a multivariate t about the likeliest machine, with the covariance of the Laplace
 * approximation, weighted by posterior over proposal. Exact as the draws grow, whatever the shape.
 */
export const sampleHypothesis = (
  fit: AirFit,
  found: HypothesisFit,
  predictor: Predictor,
  options: { readonly seed: number; readonly draws: number },
): Sampled => {
  const { readings } = fit
  const sigmas = readings.map(({ instrument, value }) => readingSigma(instrumentOf(fit, instrument), value))
  const residuals = makeResiduals(predictor, found.scaling, readings, sigmas)
  const random = seededRandom(options.seed)
  const factor = new CholeskyDecomposition(new Matrix(found.covariance.map((row) => [...row]))).lowerTriangularMatrix
  const size = found.z.length
  const logDeterminant = 2 * factor.diagonal().reduce((sum, value) => sum + Math.log(value), 0)
  const logNorm = sigmas.reduce((sum, sigma) => sum + Math.log(sigma * Math.sqrt(2 * Math.PI)), 0)
  const draws: number[][] = []
  const logWeights: number[] = []
  for (let n = 0; n < options.draws; n++) {
    const normals = Array.from({ length: size }, () => random.normal())
    const stretch = Math.sqrt(freedom / chiSquared(random))
    const z = found.z.map((middle, i) => {
      let sum = 0
      for (let j = 0; j <= i; j++) sum += factor.get(i, j) * normals[j]
      return middle + stretch * sum
    })
    const distance = stretch ** 2 * normals.reduce((sum, value) => sum + value * value, 0)
    const halfSum = residuals(z).values.reduce((sum, value) => sum + value * value, 0) / 2
    const logPosterior = -halfSum - logNorm - (size / 2) * Math.log(2 * Math.PI)
    draws.push(z)
    logWeights.push(logPosterior - logStudent(size, distance, logDeterminant))
  }
  return weighted(draws, logWeights)
}

const chiSquared = (random: Random): number => {
  let sum = 0
  for (let i = 0; i < freedom; i++) sum += random.normal() ** 2
  return sum
}

/** Logarithm of the density of a multivariate t at this squared distance. */
const logStudent = (size: number, distance: number, logDeterminant: number): number =>
  logGammaHalf(freedom + size) -
  logGammaHalf(freedom) -
  (size / 2) * Math.log(freedom * Math.PI) -
  logDeterminant / 2 -
  ((freedom + size) / 2) * Math.log(1 + distance / freedom)

/** ln Γ(n/2) for whole n from 1, by the recursion Γ(x + 1) = x Γ(x). */
const logGammaHalf = (n: number): number => {
  let sum = n % 2 === 0 ? 0 : Math.log(Math.PI) / 2
  for (let m = n - 2; m > 0; m -= 2) sum += Math.log(m / 2)
  return sum
}

const weighted = (draws: readonly (readonly number[])[], logWeights: readonly number[]): Sampled => {
  const most = Math.max(...logWeights)
  const raw = logWeights.map((value) => Math.exp(value - most))
  const total = raw.reduce((sum, value) => sum + value, 0)
  const weights = raw.map((value) => value / total)
  return {
    logEvidence: most + Math.log(total / draws.length),
    draws,
    weights,
    effectiveDraws: 1 / weights.reduce((sum, value) => sum + value * value, 0),
  }
}

/** Quantiles of one coordinate over weighted draws. */
export const weightedQuantiles = (
  { draws, weights }: Sampled,
  coordinate: number,
  shares: readonly number[],
): readonly number[] => {
  const order = draws.map((_, i) => i).sort((a, b) => draws[a][coordinate] - draws[b][coordinate])
  return shares.map((share) => {
    let sum = 0
    for (const i of order) {
      sum += weights[i]
      if (sum >= share) return draws[i][coordinate]
    }
    return draws[order[order.length - 1]][coordinate]
  })
}
