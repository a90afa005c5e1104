import { describe, expect, it } from 'vitest'
import { blueprints } from '../../../src/blueprint/library.ts'
import { ageBandOf, ageShifts, mostPrior, wearShifts } from '../../../src/facts/age-and-wear.ts'
import { machineModel, machineView } from '../../../src/machine/index.ts'
import { faultRates } from '../../../src/machine/blueprint-rates.ts'

const blueprint = blueprints[0]
const rateOf = (component: string, history: Parameters<typeof faultRates>[1] = {}) => {
  const at = blueprint.faults.findIndex(({ rate }) => rate.component?.id === component)
  if (at < 0) throw new Error(`no fault of ${component}`)
  return faultRates(blueprint, history)[at]
}

describe('what is known of one machine shifts its rates', () => {
  it('nothing known shifts nothing', () => {
    expect(faultRates(blueprint, {})).toEqual(faultRates(blueprint))
    expect(machineModel(blueprint, blueprint.plate, {})).toBe(machineModel(blueprint, blueprint.plate))
  })

  it('by the ratio of its age band, with the words for it', () => {
    const cord = ageShifts.find(({ faultType }) => faultType === 'cord')!
    const old = rateOf('flex-entry', { ageYears: 20 })
    expect(old.rate / rateOf('flex-entry').rate).toBeCloseTo(cord.ratio[3], 6)
    expect(old.shifts).toEqual([expect.stringMatching(/^aged 15 years or more: × 1\.16 \(1\.0 to 1\.4\)$/)])
    expect(old.sources.join()).toMatch(/shrunk toward 1/)
  })

  it('by wear where use wears it, and not where it does not', () => {
    expect(rateOf('carbon-brushes', { wear: 'heavy' }).rate / rateOf('carbon-brushes').rate).toBeCloseTo(
      wearShifts.heavy.ratio,
      6,
    )
    expect(rateOf('suppression-capacitor', { wear: 'heavy' })).toEqual(rateOf('suppression-capacitor'))
    expect(rateOf('carbon-brushes', { wear: 'usual' })).toEqual(rateOf('carbon-brushes'))
  })

  it('widens the interval: what shifts is not known sharply', () => {
    const plain = rateOf('carbon-brushes')
    const heavy = rateOf('carbon-brushes', { ageYears: 1, wear: 'heavy' })
    expect(heavy.high / heavy.low).toBeGreaterThan(plain.high / plain.low)
    expect(heavy.low).toBeLessThan(heavy.rate)
    expect(heavy.high).toBeGreaterThan(heavy.rate)
  })

  it('never takes a fault for more likely than six in ten', () => {
    const many = {
      ...blueprint,
      faults: blueprint.faults.map((fault) => ({ ...fault, rate: { ...fault.rate, perHundred: 100 } })),
    }
    for (const { rate } of faultRates(many, { ageYears: 30, wear: 'heavy' }))
      expect(rate).toBeLessThanOrEqual(mostPrior)
  })

  it('makes a model of its own, with the same readings table', () => {
    const plain = machineModel(blueprint, blueprint.plate)
    const old = machineModel(blueprint, blueprint.plate, { ageYears: 20 })
    expect(old.meter).toBe(plain.meter)
    expect(Array.from(old.prior).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9)
    expect(Array.from(old.prior)).not.toEqual(Array.from(plain.prior))
    expect(machineModel(blueprint, blueprint.plate, { ageYears: 20 })).toBe(old)
  })

  it('is among what a suspect rests on', () => {
    const view = machineView({
      blueprint,
      plate: blueprint.plate,
      history: { wear: 'heavy' },
      complaints: ['weak-suction'],
      missing: [],
      events: [],
      off: [],
      hourMinor: 800,
    })
    expect(view.suspects.flatMap(({ grounds }) => grounds).map(({ text }) => text)).toContain(
      'This machine: heavily used',
    )
  })
})

describe('age bands', () => {
  it.each([
    [0, 0],
    [3, 0],
    [3.9, 0],
    [4, 1],
    [7.5, 1],
    [8, 2],
    [14.9, 2],
    [15, 3],
    [60, 3],
  ])('%s years are in band %s', (age, band) => {
    expect(ageBandOf(age)).toBe(band)
  })
})
