import { describe, expect, it } from 'vitest'
import { pressKey, readingFromEntry, unitFor, type Key } from '../../../src/web/keypad.ts'

const typed = (...keys: readonly Key[]): string => keys.reduce(pressKey, '')

describe('pressKey', () => {
  it('adds digits and one point', () => expect(typed('4', '.', '7', '.', '1')).toBe('4.71'))
  it('gives a leading point its zero', () => expect(typed('.', '5')).toBe('0.5'))
  it('lets no zero stand before a digit', () => expect(typed('0', '7')).toBe('7'))
  it('rubs out the last character, and nothing from an empty entry', () => {
    expect(typed('1', '2', 'back')).toBe('1')
    expect(typed('back')).toBe('')
  })
  it('stops where a meter has no more digits', () => expect(typed(...Array<Key>(20).fill('9')).length).toBeLessThan(10))
})

describe('readingFromEntry', () => {
  // SI prefixes: k is 1e3 and M is 1e6 (SI Brochure, 9th edition, table 7).
  it.each([
    ['4.7', 'Ω', 4.7],
    ['4.7', 'kΩ', 4700],
    ['2', 'MΩ', 2e6],
    ['4.7k', 'Ω', 4700],
    ['0,5', 'Ω', 0.5],
    ['12 MΩ', 'Ω', 12e6],
  ] as const)('reads %s in %s', (entry, unit, ohm) => {
    const reading = readingFromEntry(entry, unit)
    expect(reading.kind).toBe('ok')
    if (reading.kind !== 'ok' || reading.value.kind !== 'ohms') throw new Error('not a number')
    expect(reading.value.resistanceOhm).toBeCloseTo(ohm, 6)
  })
  it.each(['charging', 'rises, then open', 'Rises then open'])('takes what a meter shows on a capacitor: %s', (entry) =>
    expect(readingFromEntry(entry, 'Ω')).toEqual({ kind: 'ok', value: { kind: 'charging' } }),
  )
  it.each(['OL', 'ol', 'O.L', 'open', '∞'])('takes what a meter shows for no path: %s', (entry) =>
    expect(readingFromEntry(entry, 'Ω')).toEqual({ kind: 'ok', value: { kind: 'open' } }),
  )
  it.each(['', '   ', 'seven', '-3', '4 V', '.'])('refuses “%s” with a mend', (entry) => {
    const reading = readingFromEntry(entry, 'Ω')
    if (reading.kind !== 'refused') throw new Error('was taken')
    expect(reading.problems[0]?.mend).not.toBe('')
  })
})

describe('unitFor', () => {
  const expected = (text: string, suspect: string | null = null) => ({ under: 'x', suspect, text })
  it('takes the unit of the sound machine', () =>
    expect(unitFor([expected('4.1 to 17 Ω', 's1'), expected('12 to 20 kΩ')])).toBe('kΩ'))
  it('looks further when a sound machine reads open', () =>
    expect(unitFor([expected('open'), expected('above 2.0 MΩ', 's1')])).toBe('MΩ'))
  it('starts with ohms when no number is expected', () => expect(unitFor([expected('open')])).toBe('Ω'))
})
