import type { SaleTime } from './sale-time.ts'

/** Logistic laws of ln T at one price, few enough to work with. */
export type TimeAtPrice = readonly { readonly middle: number; readonly shape: number; readonly share: number }[]

const placeStep = 0.1

/** The laws at one price: those of one shape whose middles nearly coincide are taken together, split between two places so that the mean is kept. */
export const timeAtPrice = ({ laws }: SaleTime, priceRatio: number): TimeAtPrice => {
  const logRatio = Math.log(priceRatio)
  const placed = laws.map(({ logDays, power, shape, share }) => ({
    at: (logDays + power * logRatio) / placeStep,
    shape,
    share,
  }))
  const first = placed.reduce((least, { at }) => Math.min(least, Math.floor(at)), Infinity)
  const last = placed.reduce((most, { at }) => Math.max(most, Math.floor(at) + 1), -Infinity)
  return [...new Set(laws.map(({ shape }) => shape))].flatMap((shape) => {
    const shares = new Float64Array(last - first + 1)
    for (const one of placed) {
      if (one.shape !== shape) continue
      const place = Math.floor(one.at)
      shares[place - first] += one.share * (place + 1 - one.at)
      shares[place - first + 1] += one.share * (one.at - place)
    }
    return [...shares].flatMap((share, i) => (share > 0 ? [{ middle: (first + i) * placeStep, shape, share }] : []))
  })
}

/** Chance that a listing still stands after so many days, 0..1. */
export const standingShare = (time: TimeAtPrice, days: number): number => {
  const logDays = Math.log(days)
  return time.reduce((sum, { middle, shape, share }) => sum + share / (1 + Math.exp((logDays - middle) / shape)), 0)
}

const halvings = 25
const longestDays = 1e6

/** Days by which half the listings at a price have sold. */
export const medianSaleDays = (time: TimeAtPrice): number => {
  let [low, high] = [-5, Math.log(longestDays)]
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2
    if (standingShare(time, Math.exp(middle)) > 0.5) low = middle
    else high = middle
  }
  return Math.exp((low + high) / 2)
}

const quadratureSteps = 40

/** Mean days on sale when it is given up on at the horizon: the area under the chance of still standing (Simpson's rule). */
export const meanDaysUpTo = (time: TimeAtPrice, horizonDays: number): number => {
  // Squares of even steps: the curve is steep near the first day.
  const at = (u: number): number => (u === 0 ? 0 : standingShare(time, horizonDays * u * u) * 2 * u * horizonDays)
  let sum = 0
  for (let i = 0; i < quadratureSteps; i += 2) {
    const [a, b, c] = [i, i + 1, i + 2].map((k) => at(k / quadratureSteps))
    sum += (a + 4 * b + c) / (3 * quadratureSteps)
  }
  return Math.min(horizonDays, sum)
}
