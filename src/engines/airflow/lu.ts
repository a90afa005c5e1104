/** LU factors of a small dense matrix in one flat array, row by row, with the order of its rows. */
export type Lu = { readonly size: number; readonly factors: Float64Array; readonly order: Int32Array }

export const makeLu = (size: number): Lu => ({
  size,
  factors: new Float64Array(size * size),
  order: new Int32Array(size),
})

/** Factors what is in `lu.factors`, in place, with partial pivoting. False when it is singular. */
export const factor = ({ size, factors, order }: Lu): boolean => {
  for (let i = 0; i < size; i++) order[i] = i
  for (let k = 0; k < size; k++) {
    let pivot = k
    for (let i = k + 1; i < size; i++) {
      if (Math.abs(factors[i * size + k]) > Math.abs(factors[pivot * size + k])) pivot = i
    }
    if (!(Math.abs(factors[pivot * size + k]) > 0)) return false
    if (pivot !== k) swapRows(factors, order, size, k, pivot)
    for (let i = k + 1; i < size; i++) {
      const ratio = (factors[i * size + k] /= factors[k * size + k])
      if (ratio === 0) continue
      for (let j = k + 1; j < size; j++) factors[i * size + j] -= ratio * factors[k * size + j]
    }
  }
  return true
}

const swapRows = (factors: Float64Array, order: Int32Array, size: number, a: number, b: number): void => {
  for (let j = 0; j < size; j++) {
    const kept = factors[a * size + j]
    factors[a * size + j] = factors[b * size + j]
    factors[b * size + j] = kept
  }
  const kept = order[a]
  order[a] = order[b]
  order[b] = kept
}

/** Solves A x = right into `x`. */
export const solveLu = ({ size, factors, order }: Lu, right: Float64Array, x: Float64Array): void => {
  for (let i = 0; i < size; i++) {
    let sum = right[order[i]]
    for (let j = 0; j < i; j++) sum -= factors[i * size + j] * x[j]
    x[i] = sum
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = x[i]
    for (let j = i + 1; j < size; j++) sum -= factors[i * size + j] * x[j]
    x[i] = sum / factors[i * size + i]
  }
}

/** Solves Aᵀ x = right into `x`. */
export const solveTransposedLu = ({ size, factors, order }: Lu, right: Float64Array, x: Float64Array): void => {
  const y = new Float64Array(size)
  for (let i = 0; i < size; i++) {
    let sum = right[i]
    for (let j = 0; j < i; j++) sum -= factors[j * size + i] * y[j]
    y[i] = sum / factors[i * size + i]
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let j = i + 1; j < size; j++) y[i] -= factors[j * size + i] * y[j]
  }
  for (let i = 0; i < size; i++) x[order[i]] = y[i]
}
