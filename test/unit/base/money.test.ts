import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { moneyFromText, moneyText } from '../../../src/base/money.ts'

describe('money', () => {
  it.each([
    ['12', 1200],
    ['12.5', 1250],
    ['£12.50', 1250],
    ['12,50', 1250],
    ['0.05', 5],
  ])('reads %s', (text, minor) => expect(moneyFromText(text)).toBe(minor))

  it.each(['', 'abc', '1.234', '-5', '1e3', '12.50.1'])('does not read “%s”', (text) =>
    expect(moneyFromText(text)).toBeNull(),
  )

  it('writes a minus sign before the symbol', () => expect(moneyText(-1250, 'GBP')).toBe('−£12.50'))

  it('reads back what it writes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9_999_999 }), (minor) => moneyFromText(moneyText(minor, 'EUR')) === minor),
    )
  })
})
