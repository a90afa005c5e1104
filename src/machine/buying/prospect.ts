import type { PlanProblem, PolicyEndings } from '../../engines/plan/index.ts'
import { normalAtMost } from '../../engines/money/index.ts'
import { exitLines } from '../exit-lines.ts'
import type { Job } from '../job.ts'
import { totalOf } from '../money-lines.ts'
import { workingPriceOf } from '../prices.ts'
import type { SaleBand } from './sale-band.ts'

/** What the job brings from here on under a policy, own time and materials paid for, as a distribution. Minor units. */
export type Prospect = {
  readonly meanMinor: number
  readonly sdMinor: number
  /** Probability that the money is at most so much. */
  readonly atMost: (minor: number) => number
  /** The most money that is not reached with no more than this probability, 0 < p < 1. */
  readonly quantile: (p: number) => number
}

/** An amount of money with its probability. */
export type Lump = { readonly probability: number; readonly minor: number }

/**
 * The money of a policy: an exact mixture over suspects, outcomes, repairs that fail and breakages, with two more chances in
 * the sale of a working machine: the price is log-normal, and a buyer who brings it back gets the money.
 * Means and spread are exact; the shape is good to a four-hundredth of its range.
 */
export const prospectOf = (problem: PlanProblem, under: PolicyEndings, job: Job, band: SaleBand): Prospect => {
  const working = workingSale(job)
  const exit = problem.exits.findIndex(({ id }) => id === 'sell-working')
  const back = Float64Array.from(problem.exits[exit]?.payoffMinor ?? [], (payoff) => comesBack(working, payoff))
  const sold: Lump[] = []
  const fixed: Lump[] = under.leftOut.map(({ probability, moneyMinor }) => ({ probability, minor: moneyMinor }))
  for (const { chance, exit: taken, spentMinor } of under.endings) {
    if (taken !== exit) {
      fixed.push(...lumpsOf(chance, problem.exits[taken].payoffMinor, spentMinor))
      continue
    }
    // What it brings when it stays sold, and when it comes back, is the same for all suspects.
    let [stays, returned] = [0, 0]
    for (let s = 0; s < chance.length; s++) {
      stays += chance[s] * (1 - back[s])
      returned += chance[s] * back[s]
    }
    if (stays > 0) sold.push({ probability: stays, minor: working.staysMinor - spentMinor })
    if (returned > 0) fixed.push({ probability: returned, minor: working.backMinor - spentMinor })
  }
  return mixture(gathered(sold), gathered(fixed), { ...band, slope: working.slope })
}

/** A lump for each suspect that an ending has. */
const lumpsOf = (chance: Float64Array, payoffMinor: readonly number[], spentMinor: number): readonly Lump[] => {
  const lumps: Lump[] = []
  for (let s = 0; s < chance.length; s++)
    if (chance[s] > 0) lumps.push({ probability: chance[s], minor: payoffMinor[s] - spentMinor })
  return lumps
}

/** The same for leaving by an exit at once, which no policy needs: a lump for each suspect. */
export const lumpsProspect = (lumps: readonly Lump[]): Prospect =>
  mixture([], gathered(lumps), { price: { median: 1, sdLog: 0 }, meanMinor: 1, slope: 0 })

type WorkingSale = { readonly staysMinor: number; readonly backMinor: number; readonly slope: number }

/** What a working machine brings when it stays sold and when it comes back, at the planned price, and how that goes with the price. */
const workingSale = (job: Job): WorkingSale => {
  const at = (one: Job, comesBack: number): number =>
    totalOf(exitLines(one, 'sell-working', { comesBack, sound: () => 1 }))
  const price = workingPriceOf(job).minor
  const dearer: Job = {
    ...job,
    prices: { spares: null, parts: {}, ...job.prices, working: { minor: 2 * price + 1, at: '' } },
  }
  const staysMinor = at(job, 0)
  return { staysMinor, backMinor: at(job, 1), slope: (at(dearer, 0) - staysMinor) / (price + 1) }
}

/** How likely a machine with a suspect's faults left in comes back: what its payoff says of it. */
const comesBack = ({ staysMinor, backMinor }: WorkingSale, payoffMinor: number): number =>
  staysMinor === backMinor ? 0 : Math.min(1, Math.max(0, (staysMinor - payoffMinor) / (staysMinor - backMinor)))

const classes = 400

/** Lumps that lie close together as one at their mean, with the spread about it; in the order of the money. */
const gathered = (lumps: readonly Lump[]): readonly Gathered[] => {
  if (lumps.length === 0) return []
  let [low, high] = [Infinity, -Infinity]
  for (const { minor } of lumps) [low, high] = [Math.min(low, minor), Math.max(high, minor)]
  const step = Math.max(1, (high - low) / classes)
  const sums = Array.from({ length: classes + 1 }, () => ({ probability: 0, first: 0, second: 0 }))
  for (const { probability, minor } of lumps) {
    const sum = sums[Math.floor((minor - low) / step)]
    sum.probability += probability
    sum.first += probability * minor
    sum.second += probability * minor * minor
  }
  return sums
    .filter(({ probability }) => probability > 0)
    .map(({ probability, first, second }) => ({ probability, minor: first / probability, second }))
}

type Gathered = Lump & { readonly second: number }

type Sale = Pick<SaleBand, 'price' | 'meanMinor'> & { readonly slope: number }

const mixture = (sold: readonly Gathered[], fixed: readonly Gathered[], sale: Sale): Prospect => {
  const sum = (of: (lump: Gathered) => number): number => [...sold, ...fixed].reduce((total, one) => total + of(one), 0)
  const whole = sum(({ probability }) => probability)
  const mean = sum(({ probability, minor }) => probability * minor) / whole
  const priceVariance = (sale.slope * sale.meanMinor) ** 2 * Math.expm1(sale.price.sdLog ** 2)
  const kept = sold.reduce((total, { probability }) => total + probability, 0) / whole
  const atMost = (minor: number): number =>
    (sold.reduce((total, one) => total + one.probability * saleAtMost(sale, minor - one.minor), 0) +
      fixed.reduce((total, one) => total + (one.minor <= minor ? one.probability : 0), 0)) /
    whole
  const variance = sum(({ second }) => second) / whole - mean ** 2 + kept * priceVariance
  const sdMinor = Math.sqrt(Math.max(0, variance))
  return { meanMinor: mean, sdMinor, atMost, quantile: (p) => quantileOf(atMost, p, mean, sdMinor) }
}

/** Probability that a sale brings no more than the planned price and so much, which may be below zero. */
const saleAtMost = ({ price, meanMinor, slope }: Sale, moreMinor: number): number => {
  if (price.sdLog === 0 || slope === 0) return moreMinor >= 0 ? 1 : 0
  const at = meanMinor + moreMinor / slope
  return at <= 0 ? 0 : normalAtMost(Math.log(at / price.median) / price.sdLog, 0, 1)
}

/** Finest money told apart when a quantile is looked for. */
const finestMinor = 1e-3

/** By halving, between ends that hold it for certain (Chebyshev's inequality). */
const quantileOf = (atMost: (minor: number) => number, p: number, mean: number, sd: number): number => {
  const reach = sd / Math.sqrt(Math.min(p, 1 - p)) + 1
  let [low, high] = [mean - reach, mean + reach]
  while (high - low > finestMinor) {
    const middle = (low + high) / 2
    if (atMost(middle) >= p) high = middle
    else low = middle
  }
  return low
}
