import { describe, expect, it } from 'vitest'
import { runMoney } from '../../../src/engines/money/index.ts'
import { priceOf, salesAt } from '../../support/money-cases.ts'

const problemsOf = (task: object) => {
  const answer = runMoney({ format: 'thrum-money-1', do: task })
  return answer.kind === 'refused' ? answer.problems : []
}
const price = { kind: 'price', currency: 'GBP', on: '2026-06-01', class: 'tub' }

describe('the door', () => {
  it('refuses what is not of the form, naming the place', () => {
    const comparables = [...salesAt([0]), ...salesAt([12.5])]
    expect(problemsOf({ ...price, comparables }).map(({ where, what }) => [where, what])).toEqual([
      ['do.comparables[0].priceMinor', 'A price is above zero; leave out what was given away'],
      ['do.comparables[1].priceMinor', 'A price is a whole number of minor units, such as 4500 for £45.00'],
    ])
    expect(problemsOf({ ...price, prior: { lowMinor: 500, highMinor: 500 } })[0].where).toBe('do.prior.highMinor')
    expect(problemsOf({ kind: 'sum', currency: 'GBP', parts: [] })).toHaveLength(1)
  })

  it('refuses what does not go together, every place of it', () => {
    const comparables = salesAt([5000, 6000]).map((one) => ({
      ...one,
      id: 'same',
      soldOn: '2026-06-02',
      currency: 'EUR',
    }))
    expect(problemsOf({ ...price, comparables }).map(({ code }) => code)).toEqual([
      'same-id',
      'sold-in-the-future',
      'mixed-currency',
      'sold-in-the-future',
      'mixed-currency',
    ])
    expect(problemsOf({ ...price, class: null }).map(({ code }) => code)).toEqual(['no-prior'])
    expect(problemsOf({ ...price, currency: 'EUR' }).map(({ code }) => code)).toEqual(['prior-of-another-currency'])
    const part = { id: 'hose', price: { kind: 'exact', minor: 900 } }
    expect(problemsOf({ kind: 'sum', currency: 'GBP', parts: [part, part] })[0].code).toBe('same-id')
  })

  it('answers in plain JSON', () => {
    const answer = priceOf(salesAt([7000]))
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer)
  })
})
