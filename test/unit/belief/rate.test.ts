import { describe, expect, it } from 'vitest'
import { fitRate } from '../../../src/engines/belief/index.ts'
import { betaAtMost, betaQuantile, logGamma } from '../../../src/engines/belief/beta.ts'

describe('logGamma', () => {
  it.each([1, 2, 5, 10, 20, 100])('of %i is the logarithm of a factorial', (n) => {
    let log = 0
    for (let k = 2; k < n; k++) log += Math.log(k)
    expect(logGamma(n)).toBeCloseTo(log, 10)
  })

  it('of one half is ln √π', () => {
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 13)
    expect(logGamma(0.25)).toBeCloseTo(Math.log(3.625609908221908), 12) // Γ(1/4), Abramowitz & Stegun 6.1.10
  })
})

describe('betaQuantile', () => {
  const levels = [0.001, 0.05, 0.25, 0.5, 0.95, 0.999]

  it.each(levels)('closed forms at %d', (p) => {
    for (const n of [0.2, 1, 7, 400]) {
      expect(betaQuantile(p, 1, n) / (1 - (1 - p) ** (1 / n))).toBeCloseTo(1, 9)
      expect(betaQuantile(p, n, 1) / p ** (1 / n)).toBeCloseTo(1, 9)
    }
    expect(betaQuantile(p, 0.5, 0.5)).toBeCloseTo(Math.sin((Math.PI * p) / 2) ** 2, 12)
    const x = betaQuantile(p, 2, 2)
    expect(3 * x ** 2 - 2 * x ** 3).toBeCloseTo(p, 12)
  })

  // Upper 5 % points of F, printed in any table of it (from memory). F = (b / a) · x / (1 − x) for x from Beta(a/2, b/2).
  it.each([
    { a: 1, b: 10, f: 4.96 },
    { a: 4, b: 10, f: 3.48 },
    { a: 5, b: 10, f: 3.33 },
    { a: 10, b: 10, f: 2.98 },
    { a: 2, b: 20, f: 3.49 },
  ])('table of F: $a and $b degrees of freedom', ({ a, b, f }) => {
    const x = betaQuantile(0.95, a / 2, b / 2)
    expect((b / a) * (x / (1 - x))).toBeCloseTo(f, 2)
  })

  it('is the inverse of the distribution and mirrors itself', () => {
    for (const [a, b] of [
      [0.25, 49.75],
      [3, 150],
      [60, 40],
    ] as const) {
      for (const p of levels) {
        const x = betaQuantile(p, a, b)
        expect(betaAtMost(x, a, b)).toBeCloseTo(p, 12)
        expect(1 - betaQuantile(1 - p, b, a)).toBeCloseTo(x, 12)
      }
    }
  })
})

describe('fitRate', () => {
  const trade = {
    componentCount: 0,
    componentTotal: 0,
    componentShare: 0,
    perHundred: 4,
    weightOpen: 0,
    weightTrade: 1,
  }

  it('the trade’s w per hundred starts as w/2 cases in fifty machines', () => {
    expect(fitRate(trade).rate).toBeCloseTo(0.04, 14)
    // Two cases in fifty: Beta(2, 48); P(X ≤ x) is P(at least 2 of 49 below x) by order statistics.
    const { low, high } = fitRate(trade)
    const atMost = (x: number) => 1 - (1 - x) ** 49 - 49 * x * (1 - x) ** 48
    expect(atMost(low)).toBeCloseTo(0.05, 10)
    expect(atMost(high)).toBeCloseTo(0.95, 10)
  })

  it('open records add to it at a discount', () => {
    const both = { ...trade, componentCount: 120, componentTotal: 1200, componentShare: 0.5, weightOpen: 0.1 }
    expect(fitRate(both).rate).toBeCloseTo((2 + 6) / (50 + 120), 14)
    const openOnly = fitRate({ ...both, weightTrade: 0, weightOpen: 1 })
    expect(openOnly.rate).toBeCloseTo(60 / 1200, 14)
    expect(openOnly.high - openOnly.low).toBeLessThan(
      fitRate({ ...both, weightTrade: 0 }).high - fitRate({ ...both, weightTrade: 0 }).low,
    )
  })

  it('what was never met has rate 0, what always was has rate 1', () => {
    expect(fitRate({ ...trade, perHundred: 0 })).toEqual({ rate: 0, low: 0, high: 0 })
    expect(fitRate({ ...trade, perHundred: 100 })).toEqual({ rate: 1, low: 1, high: 1 })
  })

  it.each([{ perHundred: 101 }, { componentShare: 1.2 }, { componentCount: 3 }, { weightTrade: 0 }])(
    'throws on %o',
    (change) => {
      expect(() => fitRate({ ...trade, ...change })).toThrow()
    },
  )
})
