/** Ratio of a rate in one group to that in all groups, with the ends of its 90 % interval. 1: no difference. */
export type ShrunkRatio = { readonly ratio: number; readonly low: number; readonly high: number }

const ninety = 1.645

/**
 * How much oftener each kind is met in each group than over all groups, from counts. Logarithms of the ratios of shares, each
 * count with a half added and each total with one (Jeffreys), are shrunk toward 0 by empirical Bayes: true log ratios
 * are taken as normal around 0 with one variance for all cells, found by {@link betweenVariance}. A cell with few records
 * thus says little, however large its ratio looks.
 * @param counts by kind, then by group; every kind has the same number of groups
 */
export const shrunkRatios = (counts: readonly (readonly number[])[]): readonly (readonly ShrunkRatio[])[] => {
  const cells = counts.map((row) => row.map((count, group) => logRatio(count, groupTotal(counts, group), row, counts)))
  const between = betweenVariance(cells.flat())
  return cells.map((row) => row.map((cell) => shrink(cell, between)))
}

/** An estimate on the logarithmic scale with its sampling variance. */
export type Estimate = { readonly value: number; readonly variance: number }

const groupTotal = (counts: readonly (readonly number[])[], group: number): number =>
  counts.reduce((sum, row) => sum + row[group], 0)

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0)

/** The group is part of the whole, so that the variance of the ratio is the group's less what the two share. */
const logRatio = (
  count: number,
  total: number,
  row: readonly number[],
  counts: readonly (readonly number[])[],
): Estimate => {
  const all = sum(counts.map(sum))
  const share = (count + 0.5) / (total + 1)
  const overall = (sum(row) + 0.5) / (all + 1)
  const variance = (1 / (count + 0.5) - 1 / (total + 1)) * (1 - total / all)
  return { value: Math.log(share / overall), variance }
}

/** Log ratios spread more widely than this would be factors past a hundred. */
const largestSd = 3
const golden = (Math.sqrt(5) - 1) / 2
const narrowings = 60

/**
 * Variance of the true values from estimates with their own variances: that under which the estimates are likeliest (normal
 * around normal, maximum marginal likelihood; golden-section search on the standard deviation). 0 where no spread is likelier.
 * @param centre what the true values lie around; null when it is to be estimated as their weighted mean
 */
export const betweenVariance = (estimates: readonly Estimate[], centre: number | null = 0): number => {
  const likelihood = (sd: number): number => logLikelihood(estimates, sd * sd, centre)
  let [low, high] = [0, largestSd]
  for (let i = 0; i < narrowings; i++) {
    const left = high - golden * (high - low)
    const right = low + golden * (high - low)
    if (likelihood(left) > likelihood(right)) high = right
    else low = left
  }
  const sd = (low + high) / 2
  return likelihood(sd) > likelihood(0) ? sd * sd : 0
}

const logLikelihood = (estimates: readonly Estimate[], between: number, centre: number | null): number => {
  const weights = estimates.map(({ variance }) => 1 / (variance + between))
  const mean = centre ?? sum(estimates.map(({ value }, i) => value * weights[i])) / sum(weights)
  return sum(estimates.map(({ value }, i) => (Math.log(weights[i]) - weights[i] * (value - mean) ** 2) / 2))
}

const shrink = ({ value, variance }: Estimate, between: number): ShrunkRatio => {
  const kept = between === 0 ? 0 : between / (between + variance)
  const middle = kept * value
  const sd = Math.sqrt(kept * variance)
  return {
    ratio: Math.exp(middle),
    low: Math.exp(middle - ninety * sd),
    high: Math.exp(middle + ninety * sd),
  }
}
