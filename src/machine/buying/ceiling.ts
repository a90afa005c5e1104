import { cautiousLossShare, type Attitude } from '../../facts/attitudes.ts'
import type { CeilingView } from './buying-view.ts'
import type { PlanMove } from '../../engines/plan/index.ts'
import type { Prospect } from './prospect.ts'

/** One thing to do with the machine once bought: the plan, or leaving at once by an exit; `first` is its first move. */
export type Way = { readonly first: PlanMove; readonly prospect: Prospect }

/** What is to come in before anything is earned. Minor units. */
export type First = { readonly travelMinor: number; readonly wantedMinor: number }

/**
 * The way that is taken when so much is paid for the machine in all: the plan; with caution, of those that seldom enough lose
 * money the one with most on average, or where there is none the one that loses least often.
 */
export const wayTaken = (ways: readonly Way[], paidMinor: number, attitude: Attitude): Way => {
  if (attitude === 'average') return ways[0]
  const weighed = ways.map((way) => ({ way, loss: way.prospect.atMost(paidMinor - finestMinor) }))
  const least = Math.min(...weighed.map(({ loss }) => loss))
  const allowed = weighed.filter(({ loss }) => loss <= Math.max(cautiousLossShare, least))
  return allowed.reduce((best, one) => (one.way.prospect.meanMinor > best.way.prospect.meanMinor ? one : best)).way
}

/** Losing less than this is no loss. */
export const finestMinor = 1e-3

/**
 * The most to pay: the price at which the plan's money, less travel and price, is just what is wanted. The price enters as a
 * straight line, so the root is found at once. Caution asks besides that at most the usual share of machines bought at that
 * price lose money (a quantile of the money); of the plan and of leaving at once it takes what then allows the higher price.
 * @param ways the plan first, then the exits that could be taken at once
 */
export const ceilingOf = (
  ways: readonly Way[],
  upperMinor: number,
  { travelMinor, wantedMinor }: First,
  attitude: Attitude,
): CeilingView => {
  const prospects = ways.map(({ prospect }) => prospect)
  const onAverageMinor = Math.max(...prospects.map(({ meanMinor }) => meanMinor)) - travelMinor - wantedMinor
  const cautious = (prospect: Prospect): number =>
    Math.min(prospect.meanMinor - wantedMinor, prospect.quantile(cautiousLossShare)) - travelMinor
  const exactMinor = attitude === 'cautious' ? Math.max(...prospects.map(cautious)) : onAverageMinor
  return {
    minor: Math.max(0, Math.floor(exactMinor)),
    exactMinor,
    notEvenForNothing: exactMinor < 0,
    onAverageMinor,
    knowingMinor: upperMinor - travelMinor - wantedMinor,
    loweredByCaution: exactMinor < onAverageMinor - 0.5,
  }
}
