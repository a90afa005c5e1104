import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import {
  airflowRequestSchema,
  airPowerGrade,
  airPowerPeak,
  solveAir,
  typicalFan,
  typicalHose,
  usualInstruments,
} from '../../../src/engines/airflow/index.ts'
import { suctionClasses } from '../../../src/facts/suction-classes.ts'

describe('typical machines', () => {
  it('have fans whose middle 95 % is the range that was quoted', () => {
    for (const { id, sealedPa } of suctionClasses) {
      const fan = typicalFan(id)
      if (fan?.curve.kind !== 'power') throw new Error(id)
      expect(fan.curve.sealedPa * Math.exp(1.96 * fan.sealedSigma)).toBeCloseTo(sealedPa[1], 6)
      expect(fan.curve.sealedPa * Math.exp(-1.96 * fan.sealedSigma)).toBeCloseTo(sealedPa[0], 6)
    }
    expect(typicalFan('hovering')).toBeNull()
  })

  it('have a peak air power of the usual size: 150 to 350 W for mains machines (from memory)', () => {
    const fan = typicalFan('cylinder')
    if (fan?.curve.kind !== 'power') throw new Error('no fan')
    const { sealedPa, openM3PerS } = fan.curve
    const peak = airPowerPeak(
      [0.3, 0.5, 0.7].map((x) => ({ airflowM3PerS: x * openM3PerS, suctionPa: sealedPa * (1 - x) })),
    )
    if (peak.kind !== 'peak') throw new Error(peak.reason)
    expect(peak.airPowerW).toBeGreaterThan(150)
    expect(peak.airPowerW).toBeLessThan(350)
  })

  it('of the dirty-air kind lose almost half of their flow to six or seven feet of hose, as one shop tells', () => {
    // A 6 to 7 ft hose costs “almost half” (retrieved, http://abcvacs.com/whatisairflow.html): taken as 35 to 50 %, with a hose of 1¼ in.
    const fan = typicalFan('direct-air-upright')
    if (fan === null) throw new Error('no fan')
    const open = (quadraticPaS2PerM6: number): number => {
      const solution = solveAir({
        air: { kind: 'given', pressurePa: 101_325, densityKgPerM3: 1.2 },
        losses: 'local-density',
        branches: [
          { kind: 'loss', id: 'hose', from: 'room', to: 'eye', linearPaSPerM3: 0, quadraticPaS2PerM6 },
          {
            kind: 'fan',
            id: 'fan',
            from: 'eye',
            to: 'room',
            curve: fan.curve,
            densityKgPerM3: 1.2,
            airflowAs: 'room',
            speed: 1,
            pressure: 1,
          },
        ],
      })
      return solution.kind === 'solved' ? solution.airflowM3PerS['fan'] : NaN
    }
    const lost = 1 - open(typicalHose('stretch', 0.032, 2).median) / open(1)
    expect(lost).toBeGreaterThan(0.35)
    expect(lost).toBeLessThan(0.5)
  })

  it('are graded against their own reference', () => {
    expect([0.95, 0.8, 0.65, 0.5].map(airPowerGrade)).toEqual(['good', 'fair', 'investigate', 'fail'])
  })

  it('are read with instruments that know their end: a 2 psi meter stops below most sealed suctions', () => {
    const end = usualInstruments.find(({ id }) => id === 'digital-manometer-2-psi')?.fullScale ?? NaN
    expect(end).toBeLessThan(suctionClasses[0].sealedPa[0])
  })
})

describe('the form of a request', () => {
  it('can be written as a JSON Schema', () => {
    const schema = z.toJSONSchema(airflowRequestSchema, { io: 'input' })
    expect(JSON.stringify(schema)).toContain('thrum-airflow-1')
  })
})
