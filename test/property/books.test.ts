import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { valueOf } from '../../src/base/result.ts'
import { monthsOf, postAll, shareCost, summaryOf, type Posting } from '../../src/engines/money/index.ts'
import { plainBooks, randomTrade } from '../support/random-trade.ts'

const seeded = { seed: 20_261_126, numRuns: 200 }
const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0)
const minors = (postings: readonly Posting[]): readonly number[] => postings.map(({ minor }) => minor)

/** What double entry promises (Pacioli 1494, and every book-keeping primer since), over trades nobody thought of. */
describe('the books of random trades', () => {
  it('every entry adds up to nothing, in whole minor units', () => {
    fc.assert(
      fc.property(randomTrade(), (logs) => {
        const postings = valueOf(postAll(logs))
        for (const note of new Set(postings.map((one) => one.note))) {
          expect(sum(minors(postings.filter((one) => one.note === note)))).toBe(0)
        }
        expect(minors(postings).every((minor) => Number.isSafeInteger(minor) && minor !== 0)).toBe(true)
      }),
      seeded,
    )
  })

  it('every penny is somewhere: cash is the profit less the stock', () => {
    fc.assert(
      fc.property(randomTrade(), (logs) => {
        const books = summaryOf(valueOf(postAll(logs)))
        const stock = books.machinesMinor + books.shelfMinor
        expect(books.cashInMinor - books.cashOutMinor).toBe(books.profitMinor - stock)
      }),
      seeded,
    )
  })

  it('agree with a purse and a list of what everything cost, kept apart from them', () => {
    fc.assert(
      fc.property(randomTrade(), (logs) => {
        const books = summaryOf(valueOf(postAll(logs)))
        const { cashMinor, machinesMinor, shelfMinor, profitMinor } = plainBooks(logs)
        expect(books.cashInMinor - books.cashOutMinor).toBe(cashMinor)
        expect(books).toMatchObject({ machinesMinor, shelfMinor, profitMinor })
      }),
      seeded,
    )
  })

  it('do not depend on which log is read first', () => {
    fc.assert(
      fc.property(
        randomTrade().chain((logs) =>
          fc.tuple(fc.constant(logs), fc.shuffledSubarray([...logs], { minLength: logs.length })),
        ),
        ([logs, shuffled]) => {
          expect(summaryOf(valueOf(postAll(shuffled)))).toEqual(summaryOf(valueOf(postAll(logs))))
          expect(monthsOf(valueOf(postAll(shuffled)))).toEqual(monthsOf(valueOf(postAll(logs))))
        },
      ),
      seeded,
    )
  })

  it('month by month add up to the whole', () => {
    fc.assert(
      fc.property(randomTrade(), (logs) => {
        const postings = valueOf(postAll(logs))
        const [months, whole] = [monthsOf(postings), summaryOf(postings)]
        expect(sum(months.map(({ moved }) => moved.profitMinor))).toBe(whole.profitMinor)
        expect(sum(months.map(({ moved }) => moved.salesMinor))).toBe(whole.salesMinor)
        expect(months.at(-1)?.stockAtEndMinor ?? 0).toBe(whole.machinesMinor + whole.shelfMinor)
        expect(months.at(-1)?.cashAtEndMinor ?? 0).toBe(whole.cashInMinor - whole.cashOutMinor)
      }),
      seeded,
    )
  })

  it('an entry struck out leaves what the purse would hold without it, or is refused where the rest needs it', () => {
    let [kept, impossible] = [0, 0]
    fc.assert(
      fc.property(randomTrade(), fc.nat(), (logs, which) => {
        const notes = logs.flatMap(({ events }) => events.map(({ note }) => note))
        const struck = notes[which % Math.max(1, notes.length)]
        const rest = logs.map((log) => {
          const events = log.events.filter(({ note }) => note !== struck)
          return { ...log, events } as typeof log
        })
        const posted = postAll(rest)
        if (posted.kind === 'refused') return void impossible++
        const books = summaryOf(posted.value)
        const { cashMinor, machinesMinor, shelfMinor, profitMinor } = plainBooks(rest)
        expect(books.cashInMinor - books.cashOutMinor).toBe(cashMinor)
        expect(books).toMatchObject({ machinesMinor, shelfMinor, profitMinor })
        kept++
      }),
      seeded,
    )
    // Both must happen, or the property says nothing.
    expect(Math.min(kept, impossible)).toBeGreaterThan(0)
  })
})

/** Quota rule of the method of largest remainders (Hamilton; Balinski and Young, Fair Representation, 1982; from memory). */
describe('a cost shared out', () => {
  const costs = fc.nat(100_000_000)
  const weights = fc.array(fc.nat(100_000_000), { minLength: 1, maxLength: 30 })

  it('adds up to the penny, each share its quota rounded down or up', () => {
    fc.assert(
      fc.property(costs, weights, (cost, given) => {
        const shares = valueOf(shareCost(cost, given))
        expect(sum(shares)).toBe(cost)
        const total = sum(given)
        if (total === 0) return
        shares.forEach((share, i) => {
          const whole = (BigInt(cost) * BigInt(given[i])) / BigInt(total)
          expect([whole, whole + 1n]).toContain(BigInt(share))
        })
      }),
      seeded,
    )
  })

  it('a larger weight never gets less', () => {
    fc.assert(
      fc.property(costs, weights, (cost, given) => {
        const shares = valueOf(shareCost(cost, given))
        const order = given.map((_, i) => i).toSorted((a, b) => given[a] - given[b])
        for (let k = 1; k < order.length; k++) {
          const [low, high] = [order[k - 1], order[k]]
          if (given[low] < given[high]) expect(shares[low]).toBeLessThanOrEqual(shares[high])
        }
      }),
      seeded,
    )
  })
})
