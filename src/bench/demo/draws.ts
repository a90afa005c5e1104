import type { Random } from '../../base/random.ts'

/** One of these. */
export const oneOf = <T>(random: Random, all: readonly T[]): T => all[Math.floor(random.uniform() * all.length)]

export const between = (random: Random, low: number, high: number): number => low + random.uniform() * (high - low)

/** Standard normal quantile of 0.95: nine in ten lie within as many deviations on either side. */
const deviationsOfNineInTen = 1.645
/** And of 5/6: two in three. */
const deviationsOfTwoInThree = 0.967

const logNormalWithin = (random: Random, low: number, high: number, deviations: number): number =>
  Math.sqrt(low * high) * Math.exp((random.normal() * Math.log(high / low)) / (2 * deviations))

/** Log-normal, nine in ten between these. */
export const nineInTen = (random: Random, low: number, high: number): number =>
  logNormalWithin(random, low, high, deviationsOfNineInTen)

/** Log-normal, two in three between these. */
export const twoInThree = (random: Random, low: number, high: number): number =>
  logNormalWithin(random, low, high, deviationsOfTwoInThree)

/** To the nearest step, never below 0. */
export const toStep = (value: number, step: number): number => Math.max(0, Math.round(value / step) * step)

export const minuteMs = 60_000
export const dayMs = 24 * 60 * minuteMs
