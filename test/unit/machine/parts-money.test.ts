import { describe, expect, it } from 'vitest'
import { defaultCosts } from '../../../src/machine/costs.ts'
import { partNet } from '../../../src/machine/parts-for-sale.ts'

/**
 * Two worked cases of the trade figures (judgement, UK street level 2024–26), parts listed singly at £8 an hour, 14 minutes a
 * sale, 6 a listing, 10 % fee: ten parts of a commercial upright worth £120 bring £77; six parts of an upright worth £45
 * bring £7. Given there as rounded pounds, with sell-through of 0.4–0.7 and 0.3–0.5.
 */
describe('what parts bring', () => {
  const uk = defaultCosts('UK')
  const brings = (pounds: readonly number[]): number =>
    pounds.reduce((sum, price) => sum + partNet(price * 100, 800, uk), 0) / 100

  it('ten parts of a commercial upright', () => {
    expect(brings([30, 45, 18, 14, 24, 18, 12, 9, 8, 6])).toBeGreaterThan(77 * 0.9)
    expect(brings([30, 45, 18, 14, 24, 18, 12, 9, 8, 6])).toBeLessThan(77 * 1.1)
  })

  it('six parts of an upright with a belt', () => {
    expect(brings([10, 7, 9, 6, 6, 5])).toBeGreaterThan(5.5)
    expect(brings([10, 7, 9, 6, 6, 5])).toBeLessThan(8.5)
  })

  it('a part that nobody would post for its price brings less than nothing', () => {
    expect(partNet(100, 800, uk)).toBeLessThan(0)
  })
})
