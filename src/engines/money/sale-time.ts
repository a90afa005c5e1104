import { daysDoubt, usualDays } from '../../facts/sale-days.ts'

/** One listing for the model: how its price stood to the median, how long it stood, and whether it sold. */
export type TimedListing = { readonly priceRatio: number; readonly days: number; readonly isSold: boolean }

/** One log-logistic law of days to sell, with how likely it is: the middle at the median price, the power of the price, the shape. */
export type Law = { readonly logDays: number; readonly power: number; readonly shape: number; readonly share: number }

/** Days to sell at any price: a mixture of log-logistic laws. */
export type SaleTime = { readonly laws: readonly Law[] }

const middlePoints = 31
const powerPoints = 21
const shapeAts = [-2, -1, 0, 1, 2]
const reachSd = 4
/** Laws less likely than this are left out. */
const leastShare = 1e-8

type Range = { readonly low: number; readonly high: number }
/** What part of the (middle, power) plane is looked at. */
type Box = { readonly logDays: Range; readonly power: Range }

/**
 * Accelerated failure time model: ln T = a + b ln(price/median) + s·logistic. Priors on a (normal), b (normal above 0) and s
 * (log-normal); the posterior on a grid. Sold listings enter by their density, unsold ones by their chance of still standing.
 * @param medianMinor what such machines fetch: it chooses the prior's row
 */
export const fitSaleTime = (medianMinor: number, listings: readonly TimedListing[]): SaleTime => {
  const seen = listings.map(({ priceRatio, days, isSold }) => ({
    logRatio: Math.log(priceRatio),
    logDays: Math.log(days),
    isSold,
  }))
  const prior = priorOf(medianMinor)
  const rough = lawsIn(prior, prior.box, seen)
  // Many listings leave so little doubt that the first grid is too coarse: look again where the doubt is.
  return { laws: lawsIn(prior, boxAround(rough, prior.box), seen).filter(({ share }) => share > leastShare) }
}

type Prior = { readonly middle: number; readonly shape: number; readonly box: Box }

const priorOf = (medianMinor: number): Prior => {
  const row = usualDays.rows.find(({ upToMinor }) => medianMinor <= upToMinor) ?? usualDays.rows[2]
  const middle = Math.log(row.lowDays * row.highDays) / 2
  // Between the ends lie two in three: a sixth below and a sixth above, at ∓ ln 5 of a standard logistic.
  const shape = Math.log(row.highDays / row.lowDays) / (2 * Math.log(5))
  const { mean, sd } = daysDoubt.pricePower
  const reach = reachSd * daysDoubt.middle
  return {
    middle,
    shape,
    box: {
      logDays: { low: middle - reach, high: middle + reach },
      power: { low: 0, high: mean + reachSd * sd },
    },
  }
}

const lawsIn = (prior: Prior, box: Box, seen: readonly Seen[]): readonly Law[] => {
  const { pricePower, middle: middleSd, shape: shapeSd } = daysDoubt
  const laws = points(box.logDays, middlePoints).flatMap((logDays) =>
    points(box.power, powerPoints).flatMap((power) =>
      shapeAts.map((at) => {
        const law = { logDays, power, shape: prior.shape * Math.exp(shapeSd * at) }
        const [a, b] = [(logDays - prior.middle) / middleSd, (power - pricePower.mean) / pricePower.sd]
        const log = seen.reduce((sum, one) => sum + logLikelihood(law, one), -0.5 * (a * a + b * b + at * at))
        return { ...law, log }
      }),
    ),
  )
  const most = laws.reduce((top, { log }) => Math.max(top, log), -Infinity)
  const total = laws.reduce((sum, { log }) => sum + Math.exp(log - most), 0)
  return laws.map(({ log, ...law }) => ({ ...law, share: Math.exp(log - most) / total }))
}

const points = ({ low, high }: Range, count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1))

const boxAround = (laws: readonly Law[], within: Box): Box => ({
  logDays: rangeAround(laws, ({ logDays }) => logDays, within.logDays, middlePoints),
  power: rangeAround(laws, ({ power }) => power, within.power, powerPoints),
})

/** The mean and some standard deviations each way, at least a step of the grid that gave them; inside the range it had. */
const rangeAround = (laws: readonly Law[], of: (law: Law) => number, within: Range, count: number): Range => {
  const mean = laws.reduce((sum, law) => sum + law.share * of(law), 0)
  const variance = laws.reduce((sum, law) => sum + law.share * (of(law) - mean) ** 2, 0)
  const reach = 5 * Math.max(Math.sqrt(variance), (within.high - within.low) / (3 * (count - 1)))
  return { low: Math.max(within.low, mean - reach), high: Math.min(within.high, mean + reach) }
}

type Seen = { readonly logRatio: number; readonly logDays: number; readonly isSold: boolean }

/** Density of ln T for a sale, chance of a longer stay for what stood unsold: both of a logistic distribution. */
const logLikelihood = ({ logDays, power, shape }: Omit<Law, 'share'>, seen: Seen): number => {
  const z = (seen.logDays - logDays - power * seen.logRatio) / shape
  const logStanding = -softplus(z)
  return seen.isSold ? z + 2 * logStanding - Math.log(shape) : logStanding
}

/** ln(1 + e^x) without overflow. */
const softplus = (x: number): number => (x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x)))
