import { over, type Complex } from './complex.ts'

/** A square matrix of complex numbers by rows, real and imaginary parts apart. */
export type ComplexMatrix = { readonly size: number; readonly re: Float64Array; readonly im: Float64Array }

/** A pivot this much smaller than its column was at the start is rounding, not a number. */
const lostPivot = 1e-14

export const complexMatrix = (size: number): ComplexMatrix => ({
  size,
  re: new Float64Array(size * size),
  im: new Float64Array(size * size),
})

export const addTo = (matrix: ComplexMatrix, row: number, column: number, value: Complex): void => {
  matrix.re[row * matrix.size + column] += value.re
  matrix.im[row * matrix.size + column] += value.im
}

/**
 * Factors a matrix in place into L and U with partial pivoting (Golub & Van Loan, Matrix Computations, 3.4).
 * Gives −1, or the first column for which no pivot is left: the matrix is singular to working precision there.
 * @param order filled with the row that was taken for each step
 */
export const factorComplex = (matrix: ComplexMatrix, order: Int32Array): number => {
  const n = matrix.size
  const least = smallestPivots(matrix)
  for (let k = 0; k < n; k++) {
    const row = pivotRow(matrix, k)
    order[k] = row
    const pivotSize = Math.hypot(matrix.re[row * n + k], matrix.im[row * n + k])
    if (!(pivotSize > least[k])) return k
    if (row !== k) swapRows(matrix, row, k)
    eliminateBelow(matrix, k)
  }
  return -1
}

/** Solves with a factored matrix; the right-hand side is replaced by the solution. */
export const solveComplex = (matrix: ComplexMatrix, order: Int32Array, rhs: Complex[]): void => {
  const n = matrix.size
  for (let k = 0; k < n; k++) [rhs[k], rhs[order[k]]] = [rhs[order[k]], rhs[k]]
  for (let row = 0; row < n; row++) rhs[row] = lessProducts(matrix, row, 0, row, rhs)
  for (let row = n - 1; row >= 0; row--) {
    const at = row * n + row
    rhs[row] = over(lessProducts(matrix, row, row + 1, n, rhs), { re: matrix.re[at], im: matrix.im[at] })
  }
}

const lessProducts = ({ size, re, im }: ComplexMatrix, row: number, first: number, end: number, x: Complex[]) => {
  let sumRe = x[row].re
  let sumIm = x[row].im
  for (let j = first; j < end; j++) {
    const at = row * size + j
    sumRe -= re[at] * x[j].re - im[at] * x[j].im
    sumIm -= re[at] * x[j].im + im[at] * x[j].re
  }
  return { re: sumRe, im: sumIm }
}

const smallestPivots = ({ size, re, im }: ComplexMatrix): Float64Array => {
  const least = new Float64Array(size)
  for (let at = 0; at < size * size; at++) {
    least[at % size] = Math.max(least[at % size], lostPivot * Math.hypot(re[at], im[at]))
  }
  return least
}

const pivotRow = ({ size, re, im }: ComplexMatrix, k: number): number => {
  let best = k
  let bestSize = -1
  for (let row = k; row < size; row++) {
    const at = row * size + k
    const here = re[at] * re[at] + im[at] * im[at]
    if (here > bestSize) [best, bestSize] = [row, here]
  }
  return best
}

const swapRows = ({ size, re, im }: ComplexMatrix, a: number, b: number): void => {
  for (const part of [re, im]) {
    const kept = part.slice(a * size, (a + 1) * size)
    part.copyWithin(a * size, b * size, (b + 1) * size)
    part.set(kept, b * size)
  }
}

const eliminateBelow = ({ size, re, im }: ComplexMatrix, k: number): void => {
  const top = k * size
  const pivot = { re: re[top + k], im: im[top + k] }
  for (let row = k + 1; row < size; row++) {
    const at = row * size
    if (re[at + k] === 0 && im[at + k] === 0) continue
    const factor = over({ re: re[at + k], im: im[at + k] }, pivot)
    re[at + k] = factor.re
    im[at + k] = factor.im
    for (let j = k + 1; j < size; j++) {
      re[at + j] -= factor.re * re[top + j] - factor.im * im[top + j]
      im[at + j] -= factor.re * im[top + j] + factor.im * re[top + j]
    }
  }
}
