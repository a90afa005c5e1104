import { sourceText } from '../../base/source-text.ts'
import { daysDoubt, usualDays } from '../../facts/sale-days.ts'
import { kaplanMeier, medianStay, type SurvivalStep } from './kaplan-meier.ts'
import type { DaysTask } from './request-schema.ts'
import { meanDaysUpTo, medianSaleDays, standingShare, timeAtPrice } from './sale-time-at.ts'
import { fitSaleTime, type SaleTime } from './sale-time.ts'

/** What asking one price brings. */
export type AskingPrice = {
  readonly priceMinor: number
  readonly medianDays: number
  /** Mean days on sale, when it is given up on at the horizon. */
  readonly meanDays: number
  readonly sellsShare: number
  /** Expected money: price less fee where it sells, what is left where it does not, less standing. */
  readonly expectedMinor: number
}

export type DaysToSell = {
  /** What stood and sold so far, whatever it was priced at. */
  readonly standing: readonly SurvivalStep[]
  /** Days by which half of that had sold; null when it never came to that. */
  readonly medianSeenDays: number | null
  readonly curve: readonly AskingPrice[]
  /** The price of the curve that brings most. */
  readonly best: AskingPrice
  readonly sources: readonly string[]
}

const lowestRatio = 0.5
const highestRatio = 2
const ratioSteps = 60

/** Price against days to sell and money, from listings that sold or still stand; and the price that brings most. */
export const daysToSell = (task: DaysTask): DaysToSell => {
  const stays = task.listings.map(({ days, ended }) => ({ days, isEvent: ended === 'sold' }))
  const time = fitSaleTime(
    task.medianMinor,
    task.listings.map(({ priceMinor, medianMinor, days, ended }) => ({
      priceRatio: priceMinor / medianMinor,
      days,
      isSold: ended === 'sold',
    })),
  )
  const standing = kaplanMeier(stays)
  const curve = pricesOf(task.medianMinor).map((priceMinor) => askingPrice(task, time, priceMinor))
  return {
    standing,
    medianSeenDays: medianStay(standing),
    curve,
    best: curve.reduce((best, one) => (one.expectedMinor > best.expectedMinor ? one : best)),
    sources: [usualDays.source, daysDoubt.source].map(sourceText),
  }
}

/** Whole prices from half to twice the median, evenly spaced in the logarithm. */
const pricesOf = (medianMinor: number): readonly number[] => {
  const span = highestRatio / lowestRatio
  const prices = Array.from({ length: ratioSteps + 1 }, (_, i) =>
    Math.max(1, Math.round(medianMinor * lowestRatio * span ** (i / ratioSteps))),
  )
  return [...new Set(prices)]
}

const askingPrice = (task: DaysTask, time: SaleTime, priceMinor: number): AskingPrice => {
  const at = timeAtPrice(time, priceMinor / task.medianMinor)
  const meanDays = meanDaysUpTo(at, task.horizonDays)
  const sellsShare = 1 - standingShare(at, task.horizonDays)
  const brings = sellsShare * priceMinor * (1 - task.feeShare) + (1 - sellsShare) * task.leftMinor
  return {
    priceMinor,
    medianDays: medianSaleDays(at),
    meanDays,
    sellsShare,
    expectedMinor: Math.round(brings - meanDays * task.holdingMinorPerDay),
  }
}
