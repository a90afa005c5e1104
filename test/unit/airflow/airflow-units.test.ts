import { describe, expect, it } from 'vitest'
import { airQuantityFromText, inAirUnit, type AirQuantity } from '../../../src/base/air-units.ts'
import { valueOf } from '../../../src/base/result.ts'

const read = (text: string, quantity: AirQuantity): number => valueOf(airQuantityFromText(text, quantity, 'here'))
const refusal = (text: string, quantity: AirQuantity) => {
  const result = airQuantityFromText(text, quantity, 'here')
  if (result.kind === 'ok') throw new Error(`${text} was read as ${result.value}`)
  return result.problems[0]
}

describe('quantities of air as text', () => {
  // Conventional inch of water 249.089 Pa, inch of mercury 3386.39 Pa; 1 cfm = 0.4719474 L/s; 1 psi = 6894.757 Pa (handbook values, from memory).
  it.each([
    ['1 inH2O', 'pressurePa', 249.08891],
    ['1 inHg', 'pressurePa', 3386.389],
    ['1 mmH₂O', 'pressurePa', 9.80665],
    ['1013.25 mbar', 'pressurePa', 101_325],
    ['1013,25 hPa', 'pressurePa', 101_325],
    ['101.325 kPa', 'pressurePa', 101_325],
    ['760 mmHg', 'pressurePa', 101_325],
    ['1 psi', 'pressurePa', 6894.757],
    ['1 cfm', 'airflowM3PerS', 4.719474e-4],
    ['1 L/s', 'airflowM3PerS', 1e-3],
    ['3600 m³/h', 'airflowM3PerS', 1],
    ['60 m3/min', 'airflowM3PerS', 1],
    ['0.045 m3/s', 'airflowM3PerS', 0.045],
    ['68 °F', 'temperatureC', 20],
    ['293.15 K', 'temperatureC', 20],
    ['−5 °C', 'temperatureC', -5],
    ['50 mm²', 'areaM2', 5e-5],
    ['19 mm', 'lengthM', 0.019],
    ['3/4 in'.replace('3/4', '0.75'), 'lengthM', 0.01905],
    ['231 V', 'voltageV', 231],
  ] as const)('%s', (text, quantity, wanted) => {
    expect(Math.abs(read(text, quantity) - wanted)).toBeLessThanOrEqual(2e-6 * Math.abs(wanted) + 1e-12)
  })

  it('are refused without a unit, with a unit of something else, and when they are no number', () => {
    expect(refusal('78', 'pressurePa')).toMatchObject({ code: 'unit-missing', where: 'here' })
    expect(refusal('19', 'lengthM').code).toBe('unit-missing')
    expect(refusal('78 cfm', 'pressurePa')).toMatchObject({ code: 'wrong-unit' })
    expect(refusal('78 cfm', 'pressurePa').mend).toContain('kPa')
    expect(refusal('a lot', 'airflowM3PerS').code).toBe('not-a-number')
  })

  it('come back as they were from any unit', () => {
    for (const unit of ['kPa', 'mbar', 'inH2O', 'mmH2O', 'inHg', 'psi']) {
      expect(read(`${inAirUnit(9574, 'pressurePa', unit)} ${unit}`, 'pressurePa')).toBeCloseTo(9574, 6)
    }
    expect(inAirUnit(20, 'temperatureC', '°F')).toBeCloseTo(68, 9)
    expect(() => inAirUnit(1, 'pressurePa', 'cfm')).toThrow(RangeError)
  })
})
