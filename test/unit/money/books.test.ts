import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import {
  hourlyMinor,
  monthsOf,
  post,
  postAll,
  shareCost,
  summaryOf,
  type MachineEvent,
  type ShelfEvent,
} from '../../../src/engines/money/index.ts'

const told = (day: string, note = day) => ({ day, note })
const sale = (receivedMinor: number) => ({ receivedMinor, feeMinor: 0, postageMinor: 0 })
const bought: MachineEvent = { ...told('2026-03-01'), kind: 'bought', minor: 500 }
const sold: MachineEvent = { ...told('2026-03-20'), kind: 'sold', ...sale(4500) }
const codes = (...events: readonly MachineEvent[]): readonly string[] => {
  const posted = post({ kind: 'machine', events })
  return posted.kind === 'refused' ? posted.problems.map(({ code, where }) => `${where}: ${code}`) : []
}

/**
 * A worked case: bought at 5.00, a belt at 4.00, sold at 45.00 with a fee of 4.50 and postage of 8.00. Double entry at cost,
 * as any book-keeping primer has it: gross profit 36.00, after fees 23.50 (worked out by hand).
 */
describe('one machine', () => {
  const events: readonly MachineEvent[] = [
    bought,
    { ...told('2026-03-02'), kind: 'spent', minor: 400 },
    { ...told('2026-04-02'), kind: 'sold', receivedMinor: 4500, feeMinor: 450, postageMinor: 800 },
  ]

  it('each entry in its accounts', () => {
    expect(valueOf(post({ kind: 'machine', events })).map(({ account, minor }) => [account, minor])).toEqual([
      ['machines', 500],
      ['cash', -500],
      ['machines', 400],
      ['cash', -400],
      ['cash', 4500],
      ['sales', -4500],
      ['fees', 1250],
      ['cash', -1250],
      ['cost-of-sales', 900],
      ['machines', -900],
    ])
  })

  it('profit, and what each month saw of it', () => {
    const postings = valueOf(post({ kind: 'machine', events }))
    expect(summaryOf(postings)).toMatchObject({ profitMinor: 2350, machinesMinor: 0, cashInMinor: 4500 })
    expect(monthsOf(postings)).toMatchObject([
      { month: '2026-03', moved: { profitMinor: 0 }, cashAtEndMinor: -900, stockAtEndMinor: 900 },
      { month: '2026-04', moved: { profitMinor: 2350 }, cashAtEndMinor: 2350, stockAtEndMinor: 0 },
    ])
    expect(hourlyMinor(2350, 141)).toBe(1000)
    expect(hourlyMinor(2350, 0)).toBeNull()
  })

  it('one that comes back is in hand again at what it cost, and the price is given back', () => {
    const back: MachineEvent = { ...told('2026-04-10'), kind: 'came-back', refundMinor: 4500 }
    const summary = summaryOf(valueOf(post({ kind: 'machine', events: [...events, back] })))
    expect(summary).toMatchObject({ machinesMinor: 900, salesMinor: 0, costOfSalesMinor: 0, profitMinor: -1250 })
  })
})

describe('a part that goes from a machine to the shelf and on', () => {
  const events: readonly MachineEvent[] = [
    bought,
    { ...told('2026-03-03'), kind: 'part-taken', part: 'motor', minor: 300 },
    { ...told('2026-03-04'), kind: 'written-off' },
  ]
  const lot: readonly ShelfEvent[] = [
    { ...told('2026-03-03', 'came'), kind: 'from-machine', minor: 300 },
    { ...told('2026-05-01', 'went'), kind: 'sold', receivedMinor: 1200, feeMinor: 120, postageMinor: 0 },
  ]

  it('takes its share of the cost along, once', () => {
    const books = postAll([
      { kind: 'machine', events },
      { kind: 'part', part: 'motor', events: lot },
    ])
    expect(summaryOf(valueOf(books))).toMatchObject({
      shelfMinor: 0,
      writtenOffMinor: 200,
      costOfSalesMinor: 300,
      profitMinor: 1200 - 120 - 500,
    })
  })

  it('is refused where it leaves the shelf with more than it came with', () => {
    const more = postAll([{ kind: 'part', part: 'motor', events: lot }])
    expect(more).toMatchObject({ kind: 'refused', problems: [{ code: 'left-with-more', where: 'motor' }] })
  })
})

describe('histories that cannot be', () => {
  it.each([
    ['sold twice', [bought, sold, { ...sold, note: 'again' }], 'again: has-left'],
    ['spent on after it was sold', [bought, sold, { ...bought, kind: 'spent', note: 'late' }], 'late: has-left'],
    ['bought twice', [bought, { ...bought, note: 'again' }], 'again: bought-twice'],
    ['sold before it came', [sold], '2026-03-20: not-bought'],
    ['back without a sale', [bought, { ...told('b'), kind: 'came-back', refundMinor: 0 }], 'b: not-sold'],
    ['more given back', [bought, sold, { ...told('b'), kind: 'came-back', refundMinor: 4501 }], 'b: refund-too-high'],
    ['more taken off', [bought, { ...told('t'), kind: 'part-taken', part: 'hose', minor: 501 }], 't: too-much-taken'],
    ['half a penny', [{ ...bought, minor: 0.5 }], '2026-03-01 minor: not-an-amount'],
    ['less than nothing', [{ ...bought, minor: -1 }], '2026-03-01 minor: not-an-amount'],
  ] as const)('%s', (_name, events, problem) => {
    expect(codes(...(events as readonly MachineEvent[]))).toEqual([problem])
  })

  it('a lot that is sold out cannot be sold or thrown away again', () => {
    const lot: readonly ShelfEvent[] = [
      { ...told('2026-03-01'), kind: 'found' },
      { ...told('2026-03-02'), kind: 'sold', ...sale(500) },
      { ...told('2026-03-03'), kind: 'written-off' },
    ]
    const posted = post({ kind: 'part', part: 'belt', events: lot })
    expect(posted).toMatchObject({ kind: 'refused', problems: [{ code: 'not-there', where: '2026-03-03' }] })
  })
})

describe('a cost shared out', () => {
  it('by expected prices, the odd pennies to the largest remainders', () => {
    // Quotas 2.17, 4.33, 6.5 of 13: the half goes up. Worked out by hand.
    expect(valueOf(shareCost(13, [1, 2, 3]))).toEqual([2, 4, 7])
  })
  it('evenly where nothing is expected of any', () => {
    expect(valueOf(shareCost(10, [0, 0, 0]))).toEqual([4, 3, 3])
  })
  it('not at all over nothing, or by halves', () => {
    expect(shareCost(10, [])).toMatchObject({ kind: 'refused', problems: [{ code: 'no-weights' }] })
    expect(shareCost(10, [0.5])).toMatchObject({ kind: 'refused', problems: [{ code: 'not-whole' }] })
  })
})
