import { levenbergMarquardt } from 'ml-levenberg-marquardt'

/** Residuals in standard deviations, and their derivatives row by row. */
export type Residuals = { readonly values: Float64Array; readonly rows: readonly ArrayLike<number>[] }

export type LeastSquares = {
  readonly at: readonly number[]
  /** Half the sum of squares. */
  readonly halfSum: number
  readonly settled: boolean
}

const mostSteps = 80
const smallestGradient = 1e-5
const firstDamping = 1e-2
const leastDamping = 1e-7
const mostDamping = 1e9
const easing = 5
const stiffening = 4
/** Readings this far from any machine converge slowly; the digits are of no use, so the search ends when twelve steps bring less than 0.1 %. */
const hopelessHalfSum = 30
const stride = 12
const worthwhile = 1e-3

/**
 * Bounded least squares by the Levenberg–Marquardt steps of ml-levenberg-marquardt. Left to itself the library goes on from worse points
 * and for a fixed number of steps; so it is asked for one step at a time. A step in vain is taken again with more damping, until the
 * gradient within the bounds is next to zero.
 */
export const leastSquares = (
  residuals: (at: readonly number[]) => Residuals,
  start: readonly number[],
  bound: number,
): LeastSquares => {
  const remembered = memory(residuals)
  const step = makeStep(remembered, start, bound)
  let at: readonly number[] = [...start]
  let halfSum = halfSumOf(remembered(at))
  let before = Infinity
  let damping = firstDamping
  const isFlat = (): boolean => largestGradient(remembered(at), at, bound) <= smallestGradient
  for (let n = 0; n < mostSteps && damping < mostDamping; n++) {
    if (isFlat()) break
    if (n % stride === 0) {
      if (halfSum > hopelessHalfSum && before - halfSum < worthwhile * halfSum) break
      before = halfSum
    }
    const tried = step(at, damping)
    const found = halfSumOf(remembered(tried))
    if (found < halfSum) {
      at = tried
      halfSum = found
      damping = Math.max(leastDamping, damping / easing)
    } else damping *= stiffening
  }
  return { at, halfSum, settled: largestGradient(remembered(at), at, bound) <= settledGradient }
}

/** What rounding may leave of the gradient; the Hessian is 1 or more, so this is far less than any spread. */
const settledGradient = 1e-3

type Remembered = (at: readonly number[]) => Residuals

const makeStep = (remembered: Remembered, start: readonly number[], bound: number) => {
  const count = remembered(start).values.length
  const data = { x: Array.from({ length: count }, (_, i) => i), y: new Float64Array(count) }
  const minValues = start.map(() => -bound)
  const maxValues = start.map(() => bound)
  return (at: readonly number[], damping: number): readonly number[] =>
    levenbergMarquardt(
      data,
      (params) => {
        const { values } = remembered(params)
        return (i) => values[i]
      },
      {
        initialValues: at,
        jacobianFunction: (params) => {
          const { rows } = remembered(params)
          return (i) => rows[i] as number[]
        },
        damping,
        maxIterations: 1,
        errorTolerance: Number.MIN_VALUE,
        minValues,
        maxValues,
      },
    ).parameterValues
}

/** The library asks for the same point several times in a row, and for values and derivatives apart. */
const memory = (residuals: (at: readonly number[]) => Residuals) => {
  const kept: { at: readonly number[]; found: Residuals }[] = []
  return (at: readonly number[]): Residuals => {
    const known = kept.find((one) => one.at.every((value, i) => value === at[i]))
    if (known !== undefined) return known.found
    const found = residuals(at)
    kept.unshift({ at: [...at], found })
    kept.length = Math.min(kept.length, 3)
    return found
  }
}

const halfSumOf = ({ values }: Residuals): number => values.reduce((sum, value) => sum + value * value, 0) / 2

const largestGradient = ({ values, rows }: Residuals, at: readonly number[], bound: number): number => {
  let most = 0
  for (let j = 0; j < at.length; j++) {
    let slope = 0
    for (let i = 0; i < values.length; i++) slope += values[i] * rows[i][j]
    const blocked = (at[j] >= bound && slope < 0) || (at[j] <= -bound && slope > 0)
    if (!blocked) most = Math.max(most, Math.abs(slope))
  }
  return most
}
