import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../../src/base/result.ts'
import { seededRandom } from '../../../../src/base/random.ts'
import { blueprints } from '../../../../src/blueprint/library.ts'
import { airParameters } from '../../../../src/machine/air/air-explanations.ts'
import { airMachineOf } from '../../../../src/machine/air/air-machine.ts'
import { airView } from '../../../../src/machine/air/make-air-view.ts'
import { readFrom } from '../../../../src/machine/air/virtual-gauge.ts'
import type { GaugeReading } from '../../../../src/machine/air/gauge-reading.ts'
import type { Job } from '../../../../src/machine/job.ts'
import { hole, sealed, suctionAt } from '../../../support/gauge.ts'

/**
 * The rows of the trade's table of what sealed suction, flow at a large hole, loss across a section and motor speed mean together
 * (common practice; written out in words of our own). Each is a machine with just that figure wrong, read without noise of its own.
 */
const blueprint = blueprints.find(({ id }) => id === 'bagged-cylinder')!
const machine = valueOf(airMachineOf(blueprint, blueprint.plate))
const soundFigures = Object.fromEntries(airParameters(machine, true).map(({ id, prior }) => [id, prior.median]))
const gauge = 'water-column'

const setUps: readonly Omit<GaugeReading, 'read'>[] = [
  { ...suctionAt(sealed, 1) },
  { ...suctionAt(hole(13), 1) },
  { ...suctionAt(hole(19), 1) },
  { ...suctionAt(hole(30), 1) },
  { ...suctionAt(sealed, 1), way: 'inlet' },
  { ...suctionAt(hole(19), 1), way: 'inlet' },
  { ...suctionAt(hole(26), 1), tapBefore: 'pre-motor-filter' },
  { ...suctionAt(hole(26), 1), tapBefore: 'motor-fan' },
].map(({ read: _read, ...setUp }) => ({ ...setUp, instrument: gauge }))

const jobWith = (readings: readonly GaugeReading[]): Job => ({
  blueprint,
  plate: blueprint.plate,
  complaints: ['weak-suction'],
  missing: [],
  events: readings.map((reading, i) => ({ kind: 'gauge', note: `g${i}`, reading })),
  off: [],
  hourMinor: 800,
})

const readingsOf = (figures: Readonly<Record<string, number>>): readonly GaugeReading[] => {
  const random = seededRandom(1)
  return setUps.map((setUp) => readFrom(machine, { ...soundFigures, ...figures }, setUp, random)!)
}

const toneOf = (ratio: number): GaugeReading => ({
  ...suctionAt(hole(19), 1),
  read: { measure: 'tone', toneHz: 600 * ratio, soundHz: 600 },
  instrument: 'motor-tone',
})

const leadingOf = (readings: readonly GaugeReading[]) => {
  const { sets } = valueOf(airView(jobWith(readings)))
  return sets[0].explanations[0]
}

describe('what the readings mean together (common practice)', () => {
  it.each<[Readonly<Record<string, number>>, string, string]>([
    [{ 'pre-motor-filter': 15 }, 'blocked pre-motor-filter', 'sealed normal, loss across the filter high'],
    [{ hose: 5 }, 'blocked hose', 'sealed normal, loss before the bag high'],
    [{ bag: 25 }, 'blocked bag', 'sealed normal, loss across the bag high'],
    [{ 'leak after hose': 70 }, 'leak after hose', 'sealed low at the hose, normal at the inlet'],
  ])('%j leads to %s: %s', (figures, expected, _why) => {
    const leading = leadingOf([...readingsOf(figures), toneOf(1)])
    expect(leading.id).toBe(expected)
    expect(leading.probability).toBeGreaterThan(0.5)
  })

  it('sealed low at both ways in is a leak behind the bag; the relief valve beside it is told by looking', () => {
    const readings = [...readingsOf({ 'leak before pre-motor-filter': 70 }), toneOf(1)]
    const { explanations } = valueOf(airView(jobWith(readings))).sets[0]
    const there = explanations.filter(({ id }) => / before pre-motor-filter$/.test(id))
    expect(explanations[0].id).toBe('leak before pre-motor-filter')
    expect(there.reduce((sum, { probability }) => sum + probability, 0)).toBeGreaterThan(0.8)
  })

  it('all low with the pitch low is the motor; with the pitch normal the fan or its seal', () => {
    const slow = [...readingsOf({ 'motor speed': 0.8 }), toneOf(0.8)]
    expect(leadingOf(slow)).toMatchObject({ id: 'motor slow' })
    const weak = [...readingsOf({ 'fan pressure': 0.62 }), toneOf(1)]
    expect(leadingOf(weak)).toMatchObject({ id: 'fan weak' })
  })

  it('all normal is a sound machine', () => {
    const leading = leadingOf([...readingsOf({}), toneOf(1)])
    expect(leading.id).toBe('sound')
    expect(leading.probability).toBeGreaterThan(0.6)
  })

  it('mouth readings alone do not tell a hose from a filter, and it says so', () => {
    const mouth = readingsOf({ 'pre-motor-filter': 12 }).slice(0, 4)
    const [set] = valueOf(airView(jobWith(mouth))).sets
    const text = set.open.join(' ')
    expect(text).toMatch(/do not tell apart:.*pre-motor filter loaded or blocked/)
    expect(text).toMatch(/do not tell apart:.*hose blocked/)
  })
})
