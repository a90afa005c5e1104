import { describe, expect, it } from 'vitest'
import { airCoverage } from '../support/air-rigs.ts'

const seed = 90
const rigs = 240

describe('bands of fitted figures', () => {
  it('of 90 % hold the true figure in 88 to 92 of 100 synthetic rigs, as far as so few rigs can tell', () => {
    const { figures, held } = airCoverage(rigs, seed)
    // Figures of one rig lean on the same readings: rigs, not figures, count as independent.
    const error = Math.sqrt((0.9 * 0.1) / rigs)
    expect(figures).toBeGreaterThan(rigs)
    expect(held / figures).toBeGreaterThan(0.88 - 2 * error)
    expect(held / figures).toBeLessThan(0.92 + 2 * error)
  })
})
