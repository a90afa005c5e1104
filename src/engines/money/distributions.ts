// A build that starts from another folder finds the types only by this line.
// eslint-disable-next-line @typescript-eslint/triple-slash-reference
/// <reference path="./jstat.d.ts" />
import jStat from 'jstat'

/** Density of a normal distribution at x. */
export const normalDensity = (x: number, mean: number, sd: number): number => jStat.normal.pdf(x, mean, sd)

/** Probability that a normal variable is at most x; an infinite x is taken as its limit. */
export const normalAtMost = (x: number, mean: number, sd: number): number => {
  if (!Number.isFinite(x)) return x > 0 ? 1 : 0
  return jStat.normal.cdf(x, mean, sd)
}

/** The x below which a standard normal variable falls with probability p, for 0 < p < 1. */
export const normalQuantile = (p: number): number => jStat.normal.inv(p, 0, 1)

/** Density of Student's t distribution at 0, for any degrees of freedom above 0. */
const centreDensity = (degrees: number): number => jStat.studentt.pdf(0, degrees)

/** Logarithm of the density of Student's t distribution with a scale, as a function of the distance from its centre. */
export const studentLogDensity = (degrees: number, scale: number): ((distance: number) => number) => {
  const top = Math.log(centreDensity(degrees) / scale)
  return (distance) => top - ((degrees + 1) / 2) * Math.log1p((distance / scale) ** 2 / degrees)
}

/** A log-normal distribution: the median, and the standard deviation of the logarithm. */
export type LogNormal = { readonly median: number; readonly sdLog: number }

/** The log-normal distribution of which nine in ten lie between two values. Needs 0 < low < high. */
export const logNormalOfBand = (low: number, high: number): LogNormal => ({
  median: Math.sqrt(low * high),
  sdLog: Math.log(high / low) / (2 * normalQuantile(0.95)),
})

/** The x below which a log-normal variable falls with probability p, for 0 < p < 1. */
export const logNormalQuantile = (p: number, { median, sdLog }: LogNormal): number =>
  sdLog === 0 ? median : jStat.lognormal.inv(p, Math.log(median), sdLog)

/** Mean of a log-normal distribution. */
export const logNormalMean = ({ median, sdLog }: LogNormal): number => median * Math.exp(sdLog ** 2 / 2)
