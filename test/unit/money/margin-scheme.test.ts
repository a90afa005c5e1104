import { describe, expect, it } from 'vitest'
import { runMoney } from '../../../src/engines/money/index.ts'

const ask = (task: object) =>
  runMoney({ format: 'thrum-money-1', do: { kind: 'margin-scheme', region: 'UK', ...task } })
const period = (...purchasesMinor: readonly number[]) => ({ id: 'first', purchasesMinor, salesMinor: [] })

describe('the margin scheme at the door', () => {
  it('says what it is not, for which region and year', () => {
    expect(ask({})).toMatchObject({
      kind: 'ok',
      value: { answer: { note: 'Information, not advice: ask an adviser. The United Kingdom, as of 2026.' } },
    })
  })

  // £500 or less per individual item: VAT (Special Provisions) Order 1995 article 13; retrieved.
  it('takes items up to £500 together, and none dearer', () => {
    expect(ask({ periods: [period(50_000)] }).kind).toBe('ok')
    expect(ask({ periods: [period(100, 50_001)] })).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'too-dear-for-global', where: 'do.periods.0.purchasesMinor.1' }],
    })
  })

  it.each([
    [{ region: 'EU' }, 'no-rate'],
    [{ region: 'US' }, 'no-margin-scheme'],
    [{ items: [{ id: 'a', purchaseMinor: 0.5, saleMinor: 1 }] }, 'not-of-the-form'],
    [{ ratePercent: 8.15 }, 'not-of-the-form'],
    [{ periods: [period(), period()] }, 'same-id'],
  ])('refuses %j', (task, code) => {
    expect(ask(task)).toMatchObject({ kind: 'refused', problems: [{ code }] })
  })

  it.each([
    [23, 22_300, 2300],
    [25.5, 22_550, 2550],
  ])('goes by a member state’s own rate: %d in a hundred and that', (ratePercent, saleMinor, vatMinor) => {
    const items = [{ id: 'a', purchaseMinor: 10_000, saleMinor }]
    expect(ask({ region: 'EU', ratePercent, items })).toMatchObject({ value: { answer: { vatMinor } } })
  })
})

describe('the books at the door', () => {
  const logs = [{ kind: 'machine', events: [{ kind: 'bought', day: '2026-03-01', note: 'a', minor: 500 }] }]
  const books = (given: object) => runMoney({ format: 'thrum-money-1', do: { kind: 'books', ...given } })

  it('are answered as postings, summary, months and pay', () => {
    expect(books({ logs, minutes: 60 })).toMatchObject({
      value: {
        kind: 'books',
        answer: { summary: { machinesMinor: 500 }, months: [{ month: '2026-03' }], hourlyMinor: 0 },
      },
    })
  })
  it('are refused where a history cannot be', () => {
    const twice = [{ kind: 'machine', events: [...logs[0].events, { ...logs[0].events[0], note: 'b' }] }]
    expect(books({ logs: twice })).toMatchObject({ kind: 'refused', problems: [{ code: 'bought-twice', where: 'b' }] })
  })
})
