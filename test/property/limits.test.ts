import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  cableFit,
  cableVerdict,
  combineUncertainty,
  conductorSizes,
  fuseTime,
  judgeReading,
  limitValue,
  smallestConductor,
  zoneOf,
  type JudgedLimit,
  type Judgement,
  type Reading,
} from '../../src/engines/limits/index.ts'
import { regions } from '../../src/facts/regions.ts'
import { safetyProfiles } from '../../src/facts/safety-profiles.ts'
import type { InstrumentFunction } from '../../src/facts/test-instruments.ts'

const seeded = { seed: 20_201_113, numRuns: 400 }
const between = (low: number, high: number) =>
  fc.double({ min: 0, max: 1, noNaN: true }).map((u) => low * (high / low) ** u)

const maximum = 1000
const instrumentWith = (percent: number, digits: number, spreadOhm: number, resolution: number) => ({
  name: 'any',
  functions: [
    {
      measures: 'resistance',
      accuracy: { kind: 'specification', percent, digits },
      ranges: [{ maximum, resolution }],
      leads: { kind: 'nulled', spreadOhm },
      testVoltageV: 500,
      testCurrentA: 0.2,
    } satisfies InstrumentFunction,
  ],
})
const specification = fc.tuple(
  fc.double({ min: 0, max: 10, noNaN: true }),
  fc.integer({ min: 1, max: 10 }),
  between(1e-3, 1),
  fc.constantFrom(0.001, 0.01, 0.1, 1),
)
const limit = fc.record({
  value: between(0.05, 900),
  sense: fc.constantFrom('at-most', 'at-least'),
  testVoltageV: fc.constantFrom(null, 250, 500),
  leastTestCurrentA: fc.constantFrom(null, 0.02, 0.2),
  includesUncertainty: fc.boolean(),
  linear: fc.constant(null),
}) satisfies fc.Arbitrary<JudgedLimit>
const figure = (value: number): Reading => ({ shown: 'figure', value, rangeMaximum: null, testVoltageV: null })
const readings = fc.double({ min: 0, max: maximum, noNaN: true })

const quantity = (given: JudgedLimit) => (given.sense === 'at-most' ? 'earth-continuity' : 'insulation')
const judge = (value: number, used: ReturnType<typeof instrumentWith>, given: JudgedLimit): Judgement =>
  judgeReading(quantity(given), figure(value), used, given)

/** How bad an answer is. "Not provable" is as bad as whatever can still be better or worse than it. */
const rank = { pass: 0, 'pass-within-uncertainty': 1, 'fail-within-uncertainty': 2, fail: 3 } as const
const rankOf = ({ kind }: Judgement): number => (kind === 'not-provable' ? 0 : rank[kind])

describe('a reading against a limit', () => {
  it('never gets better on the way across its limit', () => {
    fc.assert(
      fc.property(specification, limit, readings, readings, (spec, given, a, b) => {
        const used = instrumentWith(...spec)
        const [nearer, further] = (given.sense === 'at-most') === a < b ? [a, b] : [b, a]
        expect(rankOf(judge(nearer, used, given))).toBeLessThanOrEqual(rankOf(judge(further, used, given)))
      }),
      seeded,
    )
  })

  it('a surer instrument never turns a pass into anything else, nor a fail', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(specification, limit, readings, share, share, (spec, given, value, p, s) => {
        const [percent, digits, spread, resolution] = spec
        const before = judge(value, instrumentWith(...spec), given)
        const surer = instrumentWith(percent * p, Math.max(1, Math.floor(digits * s)), spread * s, resolution)
        const after = judge(value, surer, given)
        expect(after.uncertainty?.expanded).toBeLessThanOrEqual((before.uncertainty?.expanded ?? 0) * (1 + 1e-12))
        if (before.kind === 'pass' || before.kind === 'fail') expect(after.kind).toBe(before.kind)
      }),
      seeded,
    )
  })

  it('takes the guard band once, and not at all where the limit already allows for it', () => {
    fc.assert(
      fc.property(specification, limit, readings, (spec, given, value) => {
        const judged = judge(value, instrumentWith(...spec), given)
        const expanded = judged.uncertainty?.expanded ?? NaN
        const band = given.includesUncertainty ? 0 : expanded
        expect(judged.guardBand).toBe(band)
        expect(Math.abs((judged.acceptanceLimit ?? NaN) - given.value)).toBeCloseTo(band, 9)
        if (given.includesUncertainty) expect(['pass', 'fail', 'not-provable']).toContain(judged.kind)
      }),
      seeded,
    )
  })

  it('the acceptance limit, handed on as one that allows for the uncertainty, gives the same passes', () => {
    fc.assert(
      fc.property(specification, limit, readings, (spec, given, value) => {
        const plain = judge(value, instrumentWith(...spec), { ...given, includesUncertainty: false })
        const guarded = { ...given, value: plain.acceptanceLimit ?? NaN, includesUncertainty: true }
        fc.pre(plain.kind !== 'not-provable' && guarded.value > 0)
        const again = judge(value, instrumentWith(...spec), guarded)
        fc.pre(again.kind !== 'not-provable')
        expect(again.kind === 'pass').toBe(plain.kind === 'pass')
      }),
      seeded,
    )
  })

  it('a pass leaves the whole interval of ±U on the right side, a fail leaves it on the wrong one', () => {
    fc.assert(
      fc.property(between(0.01, 100), between(0.01, 100), between(1e-4, 10), (value, at, band) => {
        const zone = zoneOf(value, at, 'at-most', band)
        const slack = 1e-9 * (value + at)
        expect(zone === 'pass').toBe(value + band <= at || Math.abs(value + band - at) < 1e-12 * Math.max(value, at))
        if (zone === 'fail') expect(value - band).toBeGreaterThan(at - slack)
        expect(zoneOf(-value, -at, 'at-least', band)).toBe(zone)
      }),
      seeded,
    )
  })

  it('at a volt nothing passes that is proved at 500 V, and with a milliampere nothing that wants 20 mA', () => {
    fc.assert(
      fc.property(specification, limit, readings, (spec, given, value) => {
        fc.pre(given.testVoltageV !== null || given.leastTestCurrentA !== null)
        const used = instrumentWith(...spec)
        const weak = {
          name: 'weak',
          functions: used.functions.map((one) => ({ ...one, testVoltageV: 1, testCurrentA: 0.001 })),
        }
        expect(['not-provable', 'fail']).toContain(judge(value, weak, given).kind)
      }),
      seeded,
    )
  })
})

describe('uncertainty', () => {
  it('is no less than its largest part, no more than their sum, and in whatever order', () => {
    fc.assert(
      fc.property(fc.array(between(1e-6, 1e3), { minLength: 1, maxLength: 6 }), (halfWidths) => {
        const parts = halfWidths.map((halfWidth) => ({ name: 'a', distribution: 'rectangular', halfWidth }) as const)
        const { standard, expanded } = combineUncertainty(parts)
        const each = halfWidths.map((one) => one / Math.sqrt(3))
        expect(standard).toBeGreaterThanOrEqual(Math.max(...each) * (1 - 1e-12))
        expect(standard).toBeLessThanOrEqual(each.reduce((a, b) => a + b, 0) * (1 + 1e-12))
        expect(expanded).toBe(2 * standard)
        expect(combineUncertainty(parts.toReversed()).standard).toBeCloseTo(standard, 9)
      }),
      seeded,
    )
  })
})

describe('limits by the lead', () => {
  it('a longer lead never has a lower limit, and the straight line is never above the steps', () => {
    const rules = safetyProfiles.flatMap(({ limits }) => limits.filter(({ rule }) => rule.kind !== 'fixed'))
    fc.assert(
      fc.property(
        fc.constantFrom(...rules),
        fc.constantFrom(...conductorSizes),
        between(0.1, 100),
        between(0.1, 100),
        (given, size, a, b) => {
          const [short, long] = [Math.min(a, b), Math.max(a, b)].map((lengthM) => limitValue(given, { lengthM, size }))
          expect(short?.value).toBeLessThanOrEqual(long?.value ?? 0)
          expect(short?.linear ?? 0).toBeLessThanOrEqual((short?.value ?? 0) + 1e-12)
        },
      ),
      seeded,
    )
  })
})

describe('cables', () => {
  const size = fc.constantFrom(...conductorSizes)
  const lowOhm = instrumentWith(0.2, 2, 0.02, 0.01)
  const cableOf = (one: (typeof conductorSizes)[number], lengthM: number, ohm: number) => ({
    size: one,
    lengthM,
    conductors: 1,
    temperatureC: 20,
    isTinned: false,
    hasContacts: false,
    reading: figure(ohm),
    instrument: lowOhm,
  })
  it('more ohm never makes a cable better, and sound copper is never called too thin', () => {
    fc.assert(
      fc.property(size, between(1, 100), between(0.9, 1), between(1, 4), (one, lengthM, share, times) => {
        const soundOhm = (one.maximumOhmPerKm * lengthM * share) / 1000
        const sound = cableVerdict(cableOf(one, lengthM, soundOhm))
        expect(['as-claimed', 'cannot-tell']).toContain(sound.kind)
        const worse = cableVerdict(cableOf(one, lengthM, soundOhm * times))
        const order = ['too-little', 'as-claimed', 'cannot-tell', 'too-much']
        expect(order.indexOf(worse.kind)).toBeGreaterThanOrEqual(
          sound.kind === 'cannot-tell' ? order.indexOf('as-claimed') : order.indexOf(sound.kind),
        )
      }),
      seeded,
    )
  })
  it('what would do is thick, long, sound and known enough', () => {
    const condition = fc.constantFrom('sound', 'cut-or-flattened', 'hard-or-sticky', 'joined', 'not-looked-at')
    const cable = fc.record({
      id: fc.constant('c'),
      type: fc.constantFrom(null, 'H03VV-F', 'H05VV-F', 'SVT', 'SPT-2', 'nonesuch'),
      size: fc.constantFrom(null, '0.5 mm2', '0.75 mm2', '1 mm2', '18 AWG', 'nonesuch'),
      cores: fc.constantFrom(null, 2, 3),
      lengthM: fc.option(between(1, 20)),
      condition,
      hasOldColours: fc.boolean(),
    })
    fc.assert(
      fc.property(cable, size, fc.constantFrom(2, 3), fc.constantFrom(null, 2, 6), (one, needed, cores, massKg) => {
        const family = needed.awg === null ? 'harmonised' : 'american'
        const fit = cableFit(one, { size: needed, family, cores, lengthM: 6, massKg })
        expect(fit.kind === 'would-do').toBe(fit.reasons.length === 0 && fit.unknown.length === 0)
        if (fit.kind !== 'would-do') return
        expect(one.condition).toBe('sound')
        expect(one.cores).toBeGreaterThanOrEqual(cores)
        expect(one.lengthM).toBeGreaterThanOrEqual(6)
        expect(conductorSizes.find(({ id }) => id === one.size)?.areaMm2).toBeGreaterThanOrEqual(needed.areaMm2)
      }),
      seeded,
    )
  })
  it('more current or more length never asks for a thinner conductor', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...regions),
        between(0.3, 15),
        between(0.3, 15),
        between(0.5, 30),
        between(0.5, 30),
        (region, a, b, l, m) => {
          const less = smallestConductor(region, Math.min(a, b), Math.min(l, m))
          const more = smallestConductor(region, Math.max(a, b), Math.max(l, m))
          expect(less?.areaMm2).toBeLessThanOrEqual(more?.areaMm2 ?? 0)
        },
      ),
      seeded,
    )
  })
})

describe('fuses', () => {
  it('more current never takes longer, and the fast edge is never behind the slow one', () => {
    const edges = (ratingA: number, currentA: number): readonly [number, number] => {
      const time = fuseTime(ratingA, currentA)
      if (time === undefined) throw new Error('no such fuse')
      if (time.kind === 'carries') return [time.atLeastS, Infinity]
      return [time.shortestS, time.kind === 'melts' ? time.longestS : Infinity]
    }
    fc.assert(
      fc.property(fc.constantFrom(3, 13), between(1, 300), between(1, 300), (rating, a, b) => {
        const [fastLow, slowLow] = edges(rating, Math.min(a, b))
        const [fastHigh, slowHigh] = edges(rating, Math.max(a, b))
        expect(fastHigh).toBeLessThanOrEqual(fastLow * (1 + 1e-12))
        expect(slowHigh).toBeLessThanOrEqual(slowLow * (1 + 1e-12))
        expect(fastLow).toBeLessThanOrEqual(slowLow)
      }),
      seeded,
    )
  })
})
