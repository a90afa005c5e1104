import { priceDoubt, spreadShares } from '../../facts/sale-prices.ts'
import type { Spread } from './price-tree.ts'

/** Points and weights for an average over a normal distribution with mean 0 and standard deviation 1: Gauss–Hermite, five points. */
const fivePoints = [
  { at: -2.856970013872806, weight: 0.011257411327720689 },
  { at: -1.355626179974266, weight: 0.2220759220056126 },
  { at: 0, weight: 0.5333333333333333 },
  { at: 1.355626179974266, weight: 0.2220759220056126 },
  { at: 2.856970013872806, weight: 0.011257411327720689 },
] as const

/** Every way the spreads inside a class may be, from its spread as a whole: each factor log-normal, in quadrature. */
export const spreadsOf = (classSd: number): readonly Spread[] =>
  fivePoints.flatMap((between) =>
    fivePoints.map((noise): Spread => {
      const factor = Math.exp(priceDoubt.spread * between.at)
      return {
        kindSd: classSd * Math.sqrt(spreadShares.kinds) * factor,
        modelSd: classSd * Math.sqrt(spreadShares.models) * factor,
        noise: classSd * Math.sqrt(spreadShares.sales) * Math.exp(priceDoubt.sales * noise.at),
        weight: between.weight * noise.weight,
      }
    }),
  )
