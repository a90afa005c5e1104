import { describe, expect, it } from 'vitest'
import { amountText } from '../../../src/engines/limits/index.ts'
import { answerOf, problemsOf } from '../../support/limits-cases.ts'

const judge = (quantity: string, shown: object | number | string, instrument: unknown, limit: object) =>
  answerOf('judge', {
    quantity,
    reading: typeof shown === 'object' ? shown : { value: shown },
    instrument,
    limit: { kind: 'given', ...limit },
  })
const insulated = { sense: 'at-least', value: '2 MΩ', testVoltageV: 500 }
const earthed = { sense: 'at-most', value: 0.3, leastTestCurrentA: 0.2 }

describe('what an instrument can prove', () => {
  it('a multimeter never proves insulation, however high it reads, and still finds it bad', () => {
    for (const meter of ['budget-multimeter', 'mid-multimeter', 'four-digit-multimeter']) {
      const open = judge('insulation', { shown: 'above', value: null }, meter, insulated)
      expect([open.kind, open.kind === 'not-provable' && open.reason.kind]).toEqual([
        'not-provable',
        'test-voltage-too-low',
      ])
      expect(judge('insulation', '0.5 MΩ', meter, insulated).kind).toBe('fail')
    }
  })
  it('a cheap multimeter never proves 0.1 Ω, whatever the method asks for', () => {
    for (const value of [0, 0.1, 0.15, 0.2, 0.3]) {
      const answer = judge('earth-continuity', value, 'budget-multimeter', { sense: 'at-most', value: 0.1 })
      expect(answer.kind).toBe('not-provable')
      expect(answer.kind === 'not-provable' && answer.reason.kind).toBe('uncertainty-greater-than-limit')
    }
  })
  it('a sure multimeter has not the current for a protective conductor', () => {
    const answer = judge('earth-continuity', 0.2, 'four-digit-multimeter', earthed)
    expect(answer.kind === 'not-provable' && answer.reason).toEqual({
      kind: 'test-current-too-low',
      hasA: 0.001,
      needsA: 0.2,
    })
    expect(answer.sentence).toMatch(/drives 1 mA; protective conductor is proved with 200 mA or more/)
  })
  it('an open earth fails on any meter', () =>
    expect(judge('earth-continuity', { shown: 'above', value: null }, 'budget-multimeter', earthed).kind).toBe('fail'))
  it('a tester set to 250 V does not prove what is asked for at 500 V, and does at 250 V', () => {
    const at250 = { value: '20 MΩ', testVoltageV: 250 }
    expect(judge('insulation', at250, 'insulation-tester', insulated).kind).toBe('not-provable')
    expect(judge('insulation', at250, 'insulation-tester', { ...insulated, testVoltageV: 250 }).kind).toBe('pass')
  })
  it('an insulation tester off the scale passes; a range that ends below the limit proves nothing', () => {
    expect(judge('insulation', { shown: 'above', value: '200 MΩ' }, 'insulation-tester', insulated)).toMatchObject({
      kind: 'pass',
      shown: 'above',
      sentence: expect.stringMatching(/^More than 200 MΩ is above the 2 MΩ needed/) as string,
    })
    const low = { shown: 'above', value: '2 MΩ', rangeMaximum: '2 MΩ' }
    expect(judge('insulation', low, 'insulation-tester', insulated)).toMatchObject({
      kind: 'not-provable',
      reason: { kind: 'out-of-range' },
    })
  })
  it('"more than" a figure below the limit is no fail, and "less than" one above it neither', () => {
    const above = { shown: 'above', value: '0.2 MΩ' }
    const below = { shown: 'below', value: '3 mA' }
    const touch = { sense: 'at-most', value: '0.5 mA' }
    expect(judge('insulation', above, 'insulation-tester', insulated).kind).toBe('not-provable')
    expect(judge('touch-current', below, 'leakage-tester', touch).kind).toBe('not-provable')
  })
  it('a leakage below what shows passes, one beyond the scale fails', () => {
    const touch = { sense: 'at-most', value: '0.5 mA' }
    expect(judge('touch-current', { shown: 'below', value: '0.1 mA' }, 'leakage-tester', touch).kind).toBe('pass')
    expect(judge('touch-current', { shown: 'above', value: null }, 'leakage-tester', touch).kind).toBe('fail')
  })
  it('a continuity tester does not measure leakage', () => {
    const answer = judge('touch-current', '0.1 mA', 'low-ohm-tester', { sense: 'at-most', value: '0.5 mA' })
    expect(answer).toMatchObject({
      kind: 'not-provable',
      reason: { kind: 'instrument-cannot-show' },
      uncertainty: null,
    })
    expect(answer.sentence).toBe(
      '“Low-ohm continuity tester, 200 mA” does not measure touch current. Nothing is proved either way.',
    )
  })
  it('takes the leads off once, and never below nothing', () => {
    const nulled = { value: 0.35, leads: { kind: 'nulled', spreadOhm: 0.05 } }
    const limit = { sense: 'at-most', value: 5 }
    expect(judge('earth-continuity', 0.35, 'budget-multimeter', limit).value).toBeCloseTo(0.2, 12)
    expect(judge('earth-continuity', nulled, 'budget-multimeter', limit).value).toBe(0.35)
    expect(judge('earth-continuity', 0.1, 'budget-multimeter', limit).value).toBe(0)
  })
  it('flags a reading between the steps of a limit and the straight line that some read them as', () => {
    // 10 m: 0.40 Ω by steps, 0.367 Ω by the line. Derived.
    const at = (value: number) =>
      answerOf('judge', {
        quantity: 'earth-continuity',
        reading: { value },
        instrument: 'low-ohm-tester',
        limit: {
          kind: 'profile',
          profile: 'eu-en-50678-2020.v1',
          machine: { class: 'I' },
          lead: { lengthM: 10, size: '1.0' },
        },
      })
    expect([0.36, 0.38, 0.41].map((value) => at(value).isBeyondLinear)).toEqual([false, true, false])
    expect(at(0.38).sentence).toMatch(/straight line, 0.367 Ω here, and it is beyond that/)
  })
  it('refuses a range the instrument does not have', () => {
    const limit = { kind: 'given', ...insulated }
    const shown = { value: 1e6, rangeMaximum: 5e6 }
    const task = { kind: 'judge', quantity: 'insulation', reading: shown, instrument: 'insulation-tester', limit }
    expect(problemsOf(task)[0].what).toMatch(/has no range that ends at 5000000/)
  })
  it('states the rule it judged by: one with a guard band, one where the limit allows for the instrument', () => {
    const plain = judge('earth-continuity', 0.29, 'low-ohm-tester', { sense: 'at-most', value: 0.3 })
    const allowing = { sense: 'at-most', value: 0.3, includesUncertainty: true }
    const included = judge('earth-continuity', 0.29, 'low-ohm-tester', allowing)
    expect([plain.kind, plain.rule.id]).toEqual(['pass-within-uncertainty', 'guard-band-once.v1'])
    expect([included.kind, included.rule.id]).toEqual(['pass', 'uncertainty-in-limit.v1'])
    expect(included.sentence).toBe('0.29 Ω is within the 0.3 Ω allowed; that limit already allows for the instrument.')
  })
  it('lists each part of the uncertainty with its distribution and divisor', () => {
    const { uncertainty } = judge('earth-continuity', 0.2, 'low-ohm-tester', { sense: 'at-most', value: 0.3 })
    expect(uncertainty?.budget.map(({ name, distribution }) => [name, distribution])).toEqual([
      ['specification of the instrument', 'rectangular'],
      ['test leads', 'rectangular'],
    ])
    // ±(2 % of 0.20 + 2 × 0.01) = 0.024 and ±0.01: U = 2 √((0.024² + 0.01²) / 3) = 0.0300. Derived by hand.
    expect(uncertainty?.expanded).toBeCloseTo(0.03002, 5)
    expect(uncertainty?.coverageFactor).toBe(2)
  })
})

describe('amounts as text', () => {
  it.each([
    [0.208, 'ohm', '0.208 Ω'],
    [2.5e6, 'ohm', '2.5 MΩ'],
    [4700, 'ohm', '4.7 kΩ'],
    [0.00028, 'ampere', '0.28 mA'],
    [6.2752, 'ampere', '6.28 A'],
    [0, 'ohm', '0 Ω'],
    [500, 'volt', '500 V'],
  ] as const)('%d %s is %s', (value, unit, text) => expect(amountText(value, unit)).toBe(text))
})
