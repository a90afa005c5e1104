import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { quantityFromText, resistanceText } from '../../../src/base/units.ts'

const ohms = (text: string) => quantityFromText(text, 'resistanceOhm', 'reading')

describe('a resistance as a person writes it', () => {
  it.each([
    ['4.7', 4.7],
    ['4,7 Ω', 4.7],
    ['4.7 ohm', 4.7],
    ['0.2R', 0.2],
    ['12 kΩ', 12_000],
    ['12k', 12_000],
    ['2.2 Mohm', 2_200_000],
    ['150 mΩ', 0.15],
    ['  .5 ', 0.5],
    ['1e3', 1000],
  ])('%s', (text, value) => {
    expect(ohms(text)).toEqual({ kind: 'ok', value: expect.closeTo(value, 12) as number })
  })

  it.each([
    ['4.7 V', /unit of voltage, and this is resistance.*Use one of Ω/],
    ['12 pints', /not a unit known here/],
    ['-3', /negative.*zero or more/],
    ['abc', /not a number.*such as 4\.7/],
    ['', /not a number/],
  ])('refuses “%s” with what would be right', (text, message) => {
    const result = ohms(text)
    expect(result.kind === 'refused' && problemText(result.problems[0])).toMatch(message)
  })

  it.each([
    ['280 µA', 0.00028],
    ['280 uA', 0.00028],
    ['0.28 mA', 0.00028],
  ])('a current, %s', (text, value) => {
    expect(quantityFromText(text, 'currentA', 'reading')).toEqual({
      kind: 'ok',
      value: expect.closeTo(value, 12) as number,
    })
  })

  it('keeps conversion factors that are exact by definition: 1 lb = 0.45359237 kg, 1 ft = 0.3048 m (international yard and pound, 1959)', () => {
    expect(quantityFromText('2 lb', 'massKg', 'mass')).toEqual({ kind: 'ok', value: 0.90718474 })
    expect(quantityFromText('10 ft', 'lengthM', 'length')).toEqual({
      kind: 'ok',
      value: expect.closeTo(3.048, 12) as number,
    })
  })
})

describe('a resistance in words', () => {
  it.each([
    [0.213, '0.21 Ω'],
    [4.68, '4.7 Ω'],
    [17.2, '17 Ω'],
    [12_340, '12 kΩ'],
    [2_200_000, '2.2 MΩ'],
    [Infinity, 'open'],
  ])('%s', (value, text) => expect(resistanceText(value)).toBe(text))
})
