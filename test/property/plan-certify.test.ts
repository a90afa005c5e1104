import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { certify } from '../../src/engines/plan/index.ts'
import { exactWorth } from '../support/brute-plan.ts'
import { randomPlan } from '../support/random-plan.ts'

const runs = { numRuns: 1000, seed: 31 }
const slack = 1e-6

describe('the certificate on 1,000 small random problems, against plain recursion over every move', () => {
  it('encloses the optimum however early the search is stopped, and is the optimum when it says so', () => {
    let closed = 0
    fc.assert(
      fc.property(randomPlan, fc.integer({ min: 0, max: 12 }), (problem, few) => {
        const exact = exactWorth(problem)
        const early = certify(problem, { openings: few })
        expect(early.lowerMinor).toBeLessThanOrEqual(exact + slack)
        expect(early.upperMinor).toBeGreaterThanOrEqual(exact - slack)
        const late = certify(problem, { openings: 3000 })
        expect(late.lowerMinor).toBeGreaterThanOrEqual(early.lowerMinor)
        expect(late.upperMinor).toBeLessThanOrEqual(early.upperMinor)
        if (!late.closed) return
        closed++
        expect(Math.abs(late.lowerMinor - exact)).toBeLessThanOrEqual(slack)
        expect(Math.abs(late.upperMinor - exact)).toBeLessThanOrEqual(slack)
      }),
      runs,
    )
    expect(closed).toBeGreaterThan(0.99 * runs.numRuns)
  }, 300_000)
})
