import { describe, expect, it } from 'vitest'
import { runMoney } from '../../../src/engines/money/index.ts'
import { listingMedian } from '../../../src/machine/listing-median.ts'
import { seededRandom } from '../../../src/base/random.ts'

const market = { lowMinor: 6000, highMinor: 18_000 }

describe('what a listed machine was itself worth', () => {
  it('lies between what was asked and what its kind fetches, nearer to what was asked the more its kind varies', () => {
    const wide = listingMedian(20_000, 10_000, { lowMinor: 4000, highMinor: 25_000 })
    const narrow = listingMedian(20_000, 10_000, { lowMinor: 9000, highMinor: 11_000 })
    expect(wide).toBeLessThan(20_000)
    expect(wide).toBeGreaterThan(narrow)
    expect(narrow).toBeGreaterThan(10_000)
    expect(listingMedian(10_000, 10_000, market)).toBe(10_000)
  })

  it('keeps the price to ask near the market where dear machines were listed dear and sold as quickly as cheap ones', () => {
    // Every machine is asked at just what it is worth; worths differ as the market says, days do not depend on them.
    const random = seededRandom(11)
    const listings = Array.from({ length: 40 }, (_, i) => {
      const priceMinor = Math.round(10_000 * Math.exp(0.334 * random.normal()))
      return {
        id: `l${i}`,
        priceMinor,
        days: Math.max(0.5, 9 * Math.exp(0.6 * random.normal())),
        ended: 'sold' as const,
      }
    })
    const asked = (medianOf: (priceMinor: number) => number): number => {
      const rows = listings.map((row) => ({ ...row, medianMinor: medianOf(row.priceMinor) }))
      const task = { kind: 'days-to-sell', currency: 'GBP', medianMinor: 10_000, horizonDays: 30, listings: rows }
      const answer = runMoney({ format: 'thrum-money-1', do: task })
      if (answer.kind === 'refused' || answer.value.kind !== 'days-to-sell') throw new Error('no answer')
      return answer.value.answer.best.priceMinor
    }
    expect(asked((priceMinor) => listingMedian(priceMinor, 10_000, market))).toBeLessThan(15_000)
    // What would be asked without: the mistake that this is there to prevent.
    expect(asked(() => 10_000)).toBeGreaterThan(17_000)
  })
})
