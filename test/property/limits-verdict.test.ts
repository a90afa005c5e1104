import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { profilesOf } from '../../src/engines/limits/index.ts'
import { regions } from '../../src/facts/regions.ts'
import { look, reading, soundFindings, verdictOf, type VerdictCase } from '../support/limits-cases.ts'

const seeded = { seed: 50_678, numRuns: 200 }

/** Insulation is not asked for where a profile goes by leakage alone; its reading is then refused. */
const findingsFor = ({ profile, appliance }: VerdictCase) =>
  soundFindings(appliance).filter(
    (finding) => !/-reference\./.test(profile) || !('quantity' in finding) || finding.quantity !== 'insulation',
  )

const cases: fc.Arbitrary<VerdictCase> = fc
  .tuple(fc.constantFrom(...regions), fc.nat(), fc.constantFrom('I', 'II'))
  .map(([region, index, appliance]) => {
    const known = profilesOf(region)
    return { region, profile: known[index % known.length].id, appliance }
  })

describe('the verdict over a set of findings', () => {
  it('a sound machine with everything done is fit, in whatever order it was done', () => {
    fc.assert(
      fc.property(cases, fc.array(fc.nat(), { minLength: 6, maxLength: 6 }), (given, order) => {
        const shuffled = findingsFor(given)
          .map((finding, i) => ({ finding, at: order[i] }))
          .toSorted((a, b) => a.at - b.at)
          .map(({ finding }) => finding)
        const verdict = verdictOf(given, shuffled)
        expect([verdict.kind, verdict.toProve, verdict.failed]).toEqual(['fit', [], []])
        expect(verdict.profile).toBe(given.profile)
      }),
      seeded,
    )
  })

  it('one bad look or one failed reading makes it not fit, whatever else was found', () => {
    const bad = fc.constantFrom(
      look('visual', false),
      look('polarity', false),
      look('run', false),
      reading('touch-current', '12 mA', 'leakage-tester', { part: 'the tube' }),
      reading('earth-continuity', null, 'budget-multimeter', { part: 'the tube' }),
    )
    fc.assert(
      fc.property(cases, bad, fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }), (given, worse, kept) => {
        const hasIt = 'quantity' in worse
        fc.pre(!hasIt || (worse.quantity === 'touch-current') === (given.appliance === 'II'))
        const some = findingsFor(given).filter((_, i) => kept[i])
        expect(verdictOf(given, [...some, worse]).kind).toBe('not-fit')
      }),
      seeded,
    )
  })

  it('without a check that is asked for it is not proven, and that check is named', () => {
    fc.assert(
      fc.property(cases, fc.nat(), (given, index) => {
        const all = findingsFor(given)
        const left = all[index % all.length]
        const rest = all.filter((one) => one !== left)
        const verdict = verdictOf(given, rest)
        if (verdict.kind === 'fit') {
          // Only where insulation and leakage stand in for each other, or leakage is not asked for.
          expect('quantity' in left && /insulation|current/.test(left.quantity)).toBe(true)
          return
        }
        expect(verdict.kind).toBe('not-proven')
        expect(verdict.toProve).toHaveLength(1)
      }),
      seeded,
    )
  })

  it('multimeters alone never make a machine fit', () => {
    const meter = fc.constantFrom('budget-multimeter', 'mid-multimeter', 'four-digit-multimeter')
    const ohm = fc.double({ min: 0, max: 4e7, noNaN: true })
    fc.assert(
      fc.property(
        cases,
        fc.array(fc.tuple(fc.constantFrom('earth-continuity', 'insulation'), ohm, meter), { maxLength: 8 }),
        (given, readings) => {
          const findings = readings
            .filter(([quantity]) => quantity !== 'insulation' || !/-reference\./.test(given.profile))
            .map(([quantity, value, instrument], i) => reading(quantity, value, instrument, { part: `part ${i}` }))
          const looks = [look('visual'), look('polarity'), look('run')]
          expect(verdictOf(given, [...looks, ...findings]).kind).not.toBe('fit')
        },
      ),
      seeded,
    )
  })

  it('what is fit with the guard band is fit without, and class II has no earth that passed', () => {
    const milliampere = fc.double({ min: 0, max: 6, noNaN: true })
    fc.assert(
      fc.property(cases, milliampere, (given, leakage) => {
        const findings = findingsFor(given).map((one) =>
          'quantity' in one && /current/.test(one.quantity) ? { ...one, reading: { value: `${leakage} mA` } } : one,
        )
        const guarded = verdictOf(given, findings)
        const simple = verdictOf({ ...given, acceptance: 'simple' }, findings)
        if (guarded.kind === 'fit') expect(simple.kind).toBe('fit')
        expect(simple.kind === 'not-fit').toBe(guarded.kind === 'not-fit')
        const earth = guarded.steps.find(({ id }) => id === 'earth-continuity')
        expect(earth?.state === 'not-applicable').toBe(given.appliance === 'II')
      }),
      seeded,
    )
  })
})
