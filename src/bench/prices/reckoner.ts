import type { DaysToSell } from '../../engines/money/index.ts'
import { daysOfMarket, type Listing } from '../../machine/asking.ts'
import { marketOf, marketTask, type Market, type MarketAsked } from '../../machine/market.ts'

/** Works out markets and days to sell, and keeps the answers as long as nothing that they rest on changes. */
export type Reckoner = {
  readonly market: (asked: MarketAsked) => Market
  readonly days: (market: Market, listings: readonly Listing[], horizonDays: number) => DaysToSell
}

/** So many answers of each are kept, the newest: a bench has fewer models than that in hand. */
const mostKept = 200

export const makeReckoner = (): Reckoner => {
  const markets = new Map<string, Market>()
  const days = new Map<string, DaysToSell>()
  return {
    market: (asked) => kept(markets, JSON.stringify(marketTask(asked)), () => marketOf(asked)),
    days: (market, listings, horizonDays) => {
      const { currency, medianMinor } = market
      const key = JSON.stringify([currency, medianMinor, listings, horizonDays])
      return kept(days, key, () => daysOfMarket(market, listings, horizonDays))
    },
  }
}

const kept = <Value>(known: Map<string, Value>, key: string, make: () => Value): Value => {
  const value = known.get(key) ?? make()
  known.delete(key)
  known.set(key, value)
  const [oldest] = known.keys()
  if (known.size > mostKept && oldest !== undefined) known.delete(oldest)
  return value
}
