import { describe, expect, it } from 'vitest'
import { conductorOhm, flexibleConductors, typicalShareOfMaximum } from '../../../src/facts/conductors.ts'
import { fuseFactors, fuseOhm } from '../../../src/facts/fuses.ts'
import { motorFigures, runningPowerFactor, windingShare, windingSpread } from '../../../src/facts/motors.ts'

describe('conductors', () => {
  it('8 m of 0.75 mm² has at most 0.208 Ω (IEC 60228 class 5: 26.0 Ω/km)', () => {
    expect(conductorOhm(8, 0.75) / typicalShareOfMaximum.value).toBeCloseTo(0.208, 4)
  })
  it('a size between two rows goes by area: 0.82 mm² (18 AWG) within 10 % of 21.77 Ω/km (7-strand wire table)', () => {
    const perKm = conductorOhm(1000, 0.823) / typicalShareOfMaximum.value
    expect(Math.abs(perKm / 21.77 - 1)).toBeLessThan(0.1)
  })
  it('resistance falls as area grows, and area times resistance stays within 3 % of one value (it is all copper)', () => {
    const products = flexibleConductors.map((row) => row.areaMm2 * row.maximumOhmPerKm)
    expect(Math.max(...products) / Math.min(...products)).toBeLessThan(1.03)
  })
})

describe('fuses (BS 1362)', () => {
  it('1 W at rated current: 3 A at most 0.111 Ω, 13 A at most 5.9 mΩ', () => {
    expect(fuseOhm(3)).toBeCloseTo(0.111, 3)
    expect(fuseOhm(13)).toBeCloseTo(0.0059, 4)
  })
  it('a 13 A fuse carries 20.8 A and melts at 24.7 A', () => {
    expect(fuseFactors.nonFusing * 13).toBeCloseTo(20.8, 6)
    expect(fuseFactors.fusing * 13).toBeCloseTo(24.7, 6)
  })
})

describe('brushed mains motors', () => {
  // Bands worked out from two textbook machines and one measured one: 230 V 1200 W 2.1 to 13 Ω; 120 V 12 A (1397 W) 0.5 to 3.0 Ω.
  it.each([
    [230, 700, 3.7, 22],
    [230, 1200, 2.1, 13],
    [230, 2000, 1.3, 7.7],
    [120, 1397, 0.5, 3.0],
  ])('%i V %i W: winding between %d and %d Ω', (voltageV, powerW, low, high) => {
    const { windingOhm } = motorFigures(voltageV, 50, powerW)
    const edge = Math.exp(1.96 * windingSpread)
    expect(Math.abs(windingOhm / edge / low - 1)).toBeLessThan(0.06)
    expect(Math.abs((windingOhm * edge) / high - 1)).toBeLessThan(0.06)
  })
  it('draws its plate power at its plate voltage: V² = (E + IR)² + (IX)²', () => {
    const { windingOhm, backEmfOhm, inductanceH, runningA } = motorFigures(230, 50, 1200)
    const impedance = Math.hypot(windingOhm + backEmfOhm, 2 * Math.PI * 50 * inductanceH)
    expect(230 / impedance).toBeCloseTo(runningA, 9)
    expect(runningA * runningA * (windingOhm + backEmfOhm)).toBeCloseTo(1200, 6)
    expect((windingOhm + backEmfOhm) / impedance).toBeCloseTo(runningPowerFactor.value, 9)
  })
  it('keeps the winding below the share that textbook machines have', () =>
    expect(windingShare.high).toBeGreaterThan(0.29))
})
