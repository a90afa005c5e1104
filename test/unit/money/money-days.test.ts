import { describe, expect, it } from 'vitest'
import {
  fitSaleTime,
  kaplanMeier,
  meanDaysUpTo,
  medianSaleDays,
  medianStay,
  standingShare,
  timeAtPrice,
} from '../../../src/engines/money/index.ts'
import { askMoney } from '../../support/money-cases.ts'

describe('what stood and sold', () => {
  it('has a median only when half have sold', () => {
    const stays = [2, 5, 9].map((days) => ({ days, isEvent: true }))
    expect(medianStay(kaplanMeier(stays))).toBe(5)
    expect(medianStay(kaplanMeier(stays.map((one) => ({ ...one, isEvent: one.days === 2 }))))).toBeNull()
    expect(kaplanMeier([])).toEqual([])
  })
})

describe('the law of days to sell', () => {
  /** Even steps of the log-logistic law with this middle at the median price, power and shape. */
  const drawn = (middleDays: number, power: number, shape: number) =>
    [0.8, 0.9, 1, 1.1, 1.25].flatMap((priceRatio) =>
      Array.from({ length: 40 }, (_, i) => {
        const p = (i + 0.5) / 40
        const days = middleDays * priceRatio ** power * (p / (1 - p)) ** shape
        return days > 60 ? { priceRatio, days: 60, isSold: false } : { priceRatio, days, isSold: true }
      }),
    )

  it('is found again from many listings, some unsold at sixty days', () => {
    const time = fitSaleTime(5000, drawn(20, 3, 0.6))
    expect(medianSaleDays(timeAtPrice(time, 1)) / 20).toBeCloseTo(1, 1)
    expect(medianSaleDays(timeAtPrice(time, 1.2)) / (20 * 1.2 ** 3)).toBeCloseTo(1, 1)
  })

  it('is the usual one without listings: two in three between the usual ends, somewhat wider for doubt', () => {
    const usual = timeAtPrice(fitSaleTime(5000, []), 1)
    expect(medianSaleDays(usual)).toBeCloseTo(Math.sqrt(20), 1)
    expect(standingShare(usual, 2)).toBeGreaterThan(0.65)
    expect(standingShare(usual, 2)).toBeLessThan(5 / 6)
  })

  it('has for its mean up to a horizon the area under the chance of standing', () => {
    const time = timeAtPrice(fitSaleTime(5000, drawn(20, 3, 0.6)), 1.1)
    const steps = 20_000
    const area = Array.from({ length: steps }, (_, i) => standingShare(time, (90 * (i + 0.5)) / steps))
    expect(meanDaysUpTo(time, 90)).toBeCloseTo((90 / steps) * area.reduce((sum, one) => sum + one, 0), 2)
  })
})

describe('the price to ask', () => {
  const task = { kind: 'days-to-sell', currency: 'GBP', medianMinor: 5000 } as const

  it('brings the money its own figures say, and the best brings most', () => {
    const about = { feeShare: 0.12, holdingMinorPerDay: 15, horizonDays: 60, leftMinor: 1000 }
    const { best, curve } = askMoney({ ...task, ...about })
    const brings = best.sellsShare * best.priceMinor * 0.88 + (1 - best.sellsShare) * 1000 - best.meanDays * 15
    expect(best.expectedMinor).toBe(Math.round(brings))
    expect(best.expectedMinor).toBe(Math.max(...curve.map(({ expectedMinor }) => expectedMinor)))
    expect(best.priceMinor).toBeGreaterThan(curve[0].priceMinor)
    expect(best.priceMinor).toBeLessThan(curve[curve.length - 1].priceMinor)
  })

  it('is higher with more patience', () => {
    const bestAt = (horizonDays: number): number => askMoney({ ...task, horizonDays }).best.priceMinor
    expect(bestAt(120)).toBeGreaterThan(bestAt(7))
  })
})
