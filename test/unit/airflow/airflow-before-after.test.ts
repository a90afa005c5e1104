import { describe, expect, it } from 'vitest'
import { beforeAfterRatio, plainPlate, type BeforeAfter } from '../../../src/engines/airflow/index.ts'

const plates = [13, 16, 19, 23, 30].map((mm) => plainPlate(String(mm), mm / 1000))
const gauge = { id: 'g', measures: 'suction', gain: 0.005, step: 0, repeatability: 0.01, fullScale: null } as const
const air = { kind: 'given', pressurePa: 101_325, densityKgPerM3: 1.2 } as const

/** The bare linear fan of test/truth/airflow/bare-fan on five plates, its suction multiplied. */
const session = (factor: number, instrument = 'g') => ({
  air,
  mainsRatio: null,
  readings: [
    ['13', 15_914.7],
    ['16', 13_465],
    ['19', 11_034.3],
    ['23', 8114.7],
    ['30', 4413.1],
  ].map(([plate, pa]) => ({ plate: String(plate), suctionPa: Number(pa) * factor, instrument })),
})
const problem = (more: Partial<BeforeAfter>): BeforeAfter => ({
  plates,
  instruments: [gauge, { ...gauge, id: 'other' }],
  before: session(0.8),
  after: session(1),
  seed: 4,
  ...more,
})

describe('before and after', () => {
  it('gives air power as suction to the 1.5, less what the air’s expansion takes, with the rig’s errors gone', () => {
    const { plates: found } = beforeAfterRatio(problem({}))
    const at19 = found.find(({ plate }) => plate === '19')
    expect(at19?.suction.ratio).toBeCloseTo(1 / 0.8, 12)
    expect(at19?.airPower?.ratio).toBeGreaterThan(1.37)
    expect(at19?.airPower?.ratio).toBeLessThan(0.8 ** -1.5)
    // 1.5·√2·1 % = 2.1 %: derived for readings that repeat to 1 %.
    expect(at19?.airPower?.uncertainty).toBeCloseTo(0.021, 2)
    // With a hole of its own each time: 3 % for the hole and 1 % for its diameter, twice, besides.
    expect(at19?.airPower?.uncertaintyOtherRig).toBeGreaterThan(0.045)
  })

  it('counts the gain of a gauge when another one was used', () => {
    const same = beforeAfterRatio(problem({})).plates[0].suction.uncertainty
    const other = beforeAfterRatio(problem({ after: session(1, 'other') })).plates[0].suction.uncertainty
    expect(same).toBeCloseTo(Math.SQRT2 * 0.01, 6)
    expect(other).toBeCloseTo(Math.hypot(0.01, 0.01, 0.005, 0.005), 6)
  })

  it('takes the mean of readings that were repeated, which repeats better', () => {
    const once = beforeAfterRatio(problem({})).plates[0].suction
    const twice = { ...session(1), readings: [...session(0.99).readings, ...session(1.01).readings] }
    const found = beforeAfterRatio(problem({ after: twice })).plates[0].suction
    expect(found.ratio).toBeCloseTo(once.ratio, 9)
    expect(found.uncertainty).toBeCloseTo(Math.hypot(0.01, 0.01 / Math.SQRT2), 6)
  })

  it('compares the peaks too, with limits from a kept seed', () => {
    const { peak } = beforeAfterRatio(problem({}))
    expect(peak?.low).toBeLessThan(peak?.ratio ?? 0)
    expect(peak?.high).toBeGreaterThan(peak?.ratio ?? Infinity)
    expect((peak?.high ?? 9) / (peak?.low ?? 1)).toBeLessThan(1.15)
    expect(beforeAfterRatio(problem({})).peak).toEqual(peak)
  })

  it('says no change where there is none, in other air and on other mains', () => {
    const thin = { kind: 'given', pressurePa: 90_000, densityKgPerM3: 1.06 } as const
    const factor = (1.06 / 1.2) ** 0.67 * 0.97 ** (4 / 3)
    const after = { ...session(factor), air: thin, mainsRatio: 0.97 }
    const found = beforeAfterRatio(problem({ before: { ...session(1), mainsRatio: 1 }, after }))
    expect(found.correctedFor).toEqual(['density', 'mains'])
    for (const { airPower } of found.plates) expect(airPower?.ratio).toBeCloseTo(1, 9)
    expect(found.airPower?.uncertainty).toBeLessThan(0.021 / 2)
  })

  it('compares suction only where the place was sealed', () => {
    const sealed = (suctionPa: number) => ({
      air,
      mainsRatio: null,
      readings: [{ plate: null, suctionPa, instrument: 'g' }],
    })
    const found = beforeAfterRatio(problem({ before: sealed(18_000), after: sealed(21_000) }))
    expect(found.plates).toHaveLength(1)
    expect(found.plates[0]).toMatchObject({ plate: null, airflow: null, airPower: null })
    expect(found).toMatchObject({ airPower: null, peak: null })
  })
})
