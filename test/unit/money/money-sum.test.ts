import { describe, expect, it } from 'vitest'
import { askMoney } from '../../support/money-cases.ts'

const sum = (parts: readonly object[], costMinor = 0) => askMoney({ kind: 'sum', currency: 'GBP', parts, costMinor })
const band = { kind: 'band', lowMinor: 1000, highMinor: 4000 }

describe('several parts together', () => {
  it('are one log-normal distribution when there is one part that surely sells', () => {
    const { medianMinor, ninety, stepMinor, meanMinor } = sum([{ id: 'motor', price: band }])
    const sdLog = Math.log(4) / (2 * 1.6448536)
    expect(Math.abs(medianMinor - 2000)).toBeLessThanOrEqual(stepMinor)
    expect(Math.abs(ninety[0] - 1000)).toBeLessThanOrEqual(stepMinor)
    expect(Math.abs(ninety[1] - 4000)).toBeLessThanOrEqual(stepMinor)
    expect(meanMinor).toBe(Math.round(2000 * Math.exp(sdLog ** 2 / 2)))
  })

  it('take fees and the cost of a sale only from what sells', () => {
    const part = {
      id: 'hose',
      price: { kind: 'exact', minor: 1000 },
      sellsShare: 0.5,
      feeShare: 0.1,
      saleCostMinor: 300,
    }
    const answer = sum([part], 200)
    expect(answer.meanMinor).toBe(0.5 * (900 - 300) - 200)
    expect(answer.sdMinor).toBe(300)
    expect(answer.lossShare).toBeCloseTo(0.5, 9)
    expect(answer.parts).toEqual([{ id: 'hose', meanMinor: 300, sellsShare: 0.5 }])
  })

  it('can lose by selling, when a sale costs more than it brings', () => {
    const answer = sum([{ id: 'latch', price: { kind: 'exact', minor: 100 }, saleCostMinor: 400 }])
    expect(answer.meanMinor).toBe(-300)
    expect(answer.lossShare).toBeCloseTo(1, 9)
  })

  it('have the spread of independent parts', () => {
    const [one, four] = [1, 4].map((n) => sum(Array.from({ length: n }, (_, i) => ({ id: String(i), price: band }))))
    expect(four.sdMinor / one.sdMinor).toBeCloseTo(2, 2)
  })
})
