import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitSaleTime, standingShare, timeAtPrice, type TimedListing } from '../../src/engines/money/index.ts'
import { askMoney, numbersIn, priceOf, salesAt, soldOn } from '../support/money-cases.ts'
import { times } from '../support/depth.ts'

const seeded = { seed: 20_260_611, numRuns: times(6) }

const prices = (minLength: number, maxLength: number) =>
  fc.array(fc.integer({ min: 3000, max: 12_000 }), { minLength, maxLength })

const width = ([low, high]: readonly [number, number]): number => Math.log(high / low)

/** Money is whole, and nothing is other than a number. */
const expectSound = (answer: unknown): void => {
  for (const [path, value] of numbersIn(answer)) {
    expect(Number.isFinite(value), path).toBe(true)
    if (/Minor(\.|$)|\.(half|ninety)\.|\.minor$/.test(path) && !path.includes('perMinor')) {
      expect(Number.isInteger(value), `${path} ${value}`).toBe(true)
    }
  }
}

describe('what a machine would fetch', () => {
  it('is k times as much when every price is', () => {
    fc.assert(
      fc.property(prices(0, 6), fc.integer({ min: 2, max: 50 }), (list, k) => {
        const band = (factor: number) => ({ class: null, prior: { lowMinor: 4000 * factor, highMinor: 9000 * factor } })
        const one = priceOf(salesAt(list), band(1)).sale
        const scaled = priceOf(salesAt(list.map((price) => price * k)), band(k)).sale
        for (const [a, b] of [
          [one.medianMinor, scaled.medianMinor],
          [one.ninety[0], scaled.ninety[0]],
          [one.ninety[1], scaled.ninety[1]],
        ]) {
          expect(Math.abs(b - a * k)).toBeLessThanOrEqual(k + 1)
        }
      }),
      seeded,
    )
  })

  it('moves by less than six per cent for one silly price among ten', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 6000, max: 8000 }), { minLength: 9, maxLength: 9 }),
        fc.oneof(fc.integer({ min: 1, max: 2000 }), fc.integer({ min: 30_000, max: 10_000_000 })),
        (sensible, silly) => {
          const before = priceOf(salesAt(sensible)).sale.medianMinor
          const after = priceOf(salesAt([...sensible, silly]))
          expect(Math.abs(after.sale.medianMinor / before - 1)).toBeLessThan(0.06)
          expect(after.comparables[9].isOdd).toBe(true)
        },
      ),
      seeded,
    )
  })

  it('is known hardly less well with one more sale, even one that disagrees: at most half as wide again', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 5000, max: 9000 }), { minLength: 1, maxLength: 8 }), (list) => {
        const fewer = priceOf(salesAt(list.slice(1))).typical.ninety
        expect(width(priceOf(salesAt(list)).typical.ninety)).toBeLessThan(width(fewer) * 1.5)
      }),
      seeded,
    )
  })

  it('is whole money in order, whatever is entered', () => {
    const any = fc.record({
      priceMinor: fc.integer({ min: 1, max: 10_000_000 }),
      soldOn: fc.constantFrom(soldOn, '2020-02-29', '2026-06-01'),
      from: fc.constantFrom('own', 'entered'),
      machineKind: fc.constantFrom(null, 'swivel neck', 'stiff neck'),
      model: fc.constantFrom(null, 'invented 3', 'invented 4'),
      conditionShare: fc.constantFrom(0.6, 1, 1.1),
      completenessShare: fc.constantFrom(0.4, 1),
    })
    fc.assert(
      fc.property(fc.array(any, { maxLength: 6 }), (list) => {
        const answer = priceOf(list.map((one, i) => ({ id: String(i), ...one })))
        expectSound(answer)
        const { medianMinor, half, ninety } = answer.sale
        const ordered = [ninety[0], half[0], medianMinor, half[1], ninety[1]]
        expect([...ordered].sort((a, b) => a - b)).toEqual(ordered)
      }),
      seeded,
    )
  })
})

const listings = fc.array(
  fc.record({ days: fc.integer({ min: 1, max: 80 }), ended: fc.constantFrom('sold', 'unsold') }),
  { minLength: 1, maxLength: 12 },
)
const standing = (list: readonly object[], about: Readonly<Record<string, unknown>> = {}) =>
  askMoney({
    kind: 'days-to-sell',
    currency: 'GBP',
    medianMinor: 5000,
    listings: list.map((one, i) => ({ id: String(i), priceMinor: 5000, medianMinor: 5000, ...one })),
    ...about,
  })
/** What asking the median brings: the middle of the curve. */
const atMedian = ({ curve }: ReturnType<typeof standing>) => curve[(curve.length - 1) / 2]

describe('days to sell', () => {
  it('are never fewer when a sale turns out to be no sale', () => {
    fc.assert(
      fc.property(listings, (list) => {
        const [first, ...rest] = list
        const sold = atMedian(standing([{ ...first, ended: 'sold' }, ...rest]))
        const unsold = atMedian(standing([{ ...first, ended: 'unsold' }, ...rest]))
        expect(unsold.priceMinor).toBe(5000)
        expect(unsold.meanDays).toBeGreaterThanOrEqual(sold.meanDays)
        expect(unsold.medianDays).toBeGreaterThanOrEqual(sold.medianDays)
      }),
      seeded,
    )
  })

  it('one listing that stood unsold never lowers the chance of standing that long', () => {
    const timed = fc.record({
      priceRatio: fc.double({ min: 0.7, max: 1.5, noNaN: true }),
      days: fc.double({ min: 1, max: 80, noNaN: true }),
      isSold: fc.boolean(),
    })
    fc.assert(
      fc.property(fc.array(timed, { maxLength: 12 }), timed, (list, one) => {
        const chanceFrom = (all: readonly TimedListing[]): number =>
          standingShare(timeAtPrice(fitSaleTime(5000, all), one.priceRatio), one.days)
        expect(chanceFrom([...list, { ...one, isSold: false }])).toBeGreaterThan(chanceFrom(list) - 1e-4)
      }),
      { ...seeded, numRuns: times(12) },
    )
  })

  it('grow with the price, the chance of a sale falls, and the answer is sound', () => {
    fc.assert(
      fc.property(listings, fc.integer({ min: 0, max: 100 }), (list, holdingMinorPerDay) => {
        const answer = standing(list, { holdingMinorPerDay })
        expectSound(answer)
        answer.curve.slice(1).forEach((one, i) => {
          expect(one.medianDays).toBeGreaterThan(answer.curve[i].medianDays)
          expect(one.sellsShare).toBeLessThanOrEqual(answer.curve[i].sellsShare)
        })
      }),
      seeded,
    )
  })

  it('asks for no more when standing costs more', () => {
    fc.assert(
      fc.property(listings, fc.integer({ min: 0, max: 50 }), fc.integer({ min: 1, max: 50 }), (list, holding, more) => {
        const cheap = standing(list, { holdingMinorPerDay: holding }).best
        const dear = standing(list, { holdingMinorPerDay: holding + more }).best
        expect(dear.priceMinor).toBeLessThanOrEqual(cheap.priceMinor)
      }),
      seeded,
    )
  })
})

const part = fc.record({
  price: fc.oneof(
    fc.record({ kind: fc.constant('exact'), minor: fc.integer({ min: 1, max: 5000 }) }),
    fc
      .tuple(fc.integer({ min: 1, max: 4000 }), fc.integer({ min: 1, max: 4000 }))
      .map(([lowMinor, more]) => ({ kind: 'band', lowMinor, highMinor: lowMinor + more })),
  ),
  soundShare: fc.double({ min: 0, max: 1, noNaN: true }),
  sellsShare: fc.double({ min: 0, max: 1, noNaN: true }),
  feeShare: fc.constantFrom(0, 0.1, 1),
  saleCostMinor: fc.integer({ min: 0, max: 800 }),
})

describe('several parts together', () => {
  it('keep all probability and the mean of their own means, in whole money', () => {
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 0, max: 3000 }),
        (list, costMinor) => {
          const parts = list.map((one, i) => ({ id: String(i), ...one }))
          const answer = askMoney({ kind: 'sum', currency: 'GBP', parts, costMinor })
          expectSound(answer)
          const shares = answer.density.reduce((sum, { share }) => sum + share, 0)
          const mean = answer.density.reduce((sum, { share, minor }) => sum + share * minor, 0)
          const column =
            answer.density.length > 1 ? answer.density[1].minor - answer.density[0].minor : answer.stepMinor
          expect(shares).toBeCloseTo(1, 4)
          // A column is drawn at its middle.
          expect(Math.abs(mean - answer.meanMinor)).toBeLessThanOrEqual(
            column / 2 + answer.stepMinor + 1 + 0.002 * Math.abs(answer.meanMinor),
          )
        },
      ),
      seeded,
    )
  })
})
