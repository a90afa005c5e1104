import { normalDensity } from './distributions.ts'

/** Evenly spaced points. What lies on a grid is a list of as many numbers. */
export type Grid = { readonly start: number; readonly step: number; readonly size: number }

export const gridPoint = (grid: Grid, i: number): number => grid.start + i * grid.step

/** A grid that covers a range and has a point at `anchor`, so that shifting everything shifts the grid with it. */
export const gridOver = (low: number, high: number, anchor: number, step: number): Grid => {
  const first = Math.floor((low - anchor) / step)
  const last = Math.ceil((high - anchor) / step)
  return { start: anchor + first * step, step, size: last - first + 1 }
}

export const onGrid = (grid: Grid, value: (x: number) => number): Float64Array =>
  Float64Array.from({ length: grid.size }, (_, i) => value(gridPoint(grid, i)))

const kernelReachSd = 6

/** A normal distribution as a kernel for {@link convolved}, from its middle outward; both halves together sum to one. */
export const normalKernel = ({ step, size }: Grid, sd: number): Float64Array => {
  const reach = Math.min(size - 1, Math.ceil((kernelReachSd * sd) / step))
  if (reach === 0) return Float64Array.of(1)
  const kernel = Float64Array.from({ length: reach + 1 }, (_, i) => normalDensity(i * step, 0, sd))
  const total = kernel.reduce((sum, one) => sum + 2 * one, -kernel[0])
  return kernel.map((one) => one / total)
}

/** Convolution with a symmetric kernel, given from its middle outward. What leaves the grid is lost. */
export const convolved = (values: Float64Array, kernel: Float64Array): Float64Array => {
  const { length } = values
  const result = values.map((one) => one * kernel[0])
  const reach = Math.min(kernel.length, length)
  for (let r = 1; r < reach; r++) {
    const share = kernel[r]
    for (let i = r; i < length; i++) {
      result[i] += share * values[i - r]
      result[i - r] += share * values[i]
    }
  }
  return result
}

/** The values over their sum. */
export const normalised = (values: Float64Array): Float64Array => {
  const total = values.reduce((sum, one) => sum + one, 0)
  return values.map((one) => one / total)
}

/** The x below which the share p of a distribution on a grid lies. Each point stands for the cell around it. */
export const gridQuantile = (grid: Grid, shares: Float64Array, p: number): number => {
  let below = 0
  for (let i = 0; i < grid.size; i++) {
    if (below + shares[i] >= p) return gridPoint(grid, i) + ((p - below) / shares[i] - 0.5) * grid.step
    below += shares[i]
  }
  return gridPoint(grid, grid.size - 1)
}

/** Mean and standard deviation of a distribution on a grid. */
export const gridMoments = (grid: Grid, shares: Float64Array): { readonly mean: number; readonly sd: number } => {
  const mean = shares.reduce((sum, share, i) => sum + share * gridPoint(grid, i), 0)
  const variance = shares.reduce((sum, share, i) => sum + share * (gridPoint(grid, i) - mean) ** 2, 0)
  return { mean, sd: Math.sqrt(variance) }
}
