/** What the decision to buy rests on. Money in minor units. */
export type Deal = {
  /** Probability of each suspect of the plan. */
  readonly belief: Float64Array
  /** Money by suspect of each thing that could be done with the machine once bought. */
  readonly ways: readonly Float64Array[]
  /** What must come in before anything is earned: travel and the wanted profit. */
  readonly firstMinor: number
  readonly askingMinor: number
}

/** One answer or result: how likely, and the probability of it under each suspect. */
export type Told = { readonly id: string; readonly chance: Float64Array }

export type Weighed = {
  /** What knowing it before buying is worth: never below zero. */
  readonly valueMinor: number
  /** By how much it moves the ceiling, on average. */
  readonly movesMinor: number
  readonly results: readonly { readonly id: string; readonly probability: number; readonly ceilingMinor: number }[]
}

/** Money expected of the best way, for weights over the suspects that need not sum to one. */
export const bestWay = (ways: Deal['ways'], weight: Float64Array): number =>
  Math.max(...ways.map((way) => way.reduce((sum, money, s) => sum + money * weight[s], 0)))

/**
 * What it is worth to be told something before deciding: mean of max(0, ceiling given it − asking price) less
 * max(0, ceiling now − asking price). The ways are those of now (alpha vectors), so what could be planned anew on the answer is
 * left out and the value is a lower bound. Never negative: a maximum of linear functions is convex (Jensen).
 */
export const weigh = (deal: Deal, told: readonly Told[]): Weighed => {
  const { belief, ways, firstMinor, askingMinor } = deal
  const now = bestWay(ways, belief) - firstMinor
  let gain = 0
  let moves = 0
  const results = told.map(({ id, chance }) => {
    const weight = belief.map((p, s) => p * chance[s])
    const probability = weight.reduce((sum, p) => sum + p, 0)
    if (probability <= 0) return { id, probability: 0, ceilingMinor: now }
    const ceilingMinor = bestWay(ways, weight) / probability - firstMinor
    gain += probability * Math.max(0, ceilingMinor - askingMinor)
    moves += probability * Math.abs(ceilingMinor - now)
    return { id, probability, ceilingMinor }
  })
  const valueMinor = gain - Math.max(0, now - askingMinor)
  // The chances of all results sum to one but for rounding.
  return { valueMinor: valueMinor < 1e-6 * (Math.abs(now) + 1) ? 0 : valueMinor, movesMinor: moves, results }
}
