import { describe, expect, it } from 'vitest'
import { evidenceSchema } from '../../../src/base/source.ts'
import { answerOf } from '../../support/limits-cases.ts'

const choose = (region: string, plate: object, more: object = {}) =>
  answerOf('lead', { plate: { class: 'II', massKg: 6, ...plate }, region, lengthM: 6, ...more })
const cable = (more: object = {}) => ({
  id: 'c',
  type: 'H05VV-F',
  size: '0.75 mm2',
  cores: 2,
  lengthM: 8,
  condition: 'sound',
  ...more,
})

describe('a replacement lead', () => {
  it('for 1200 W in the United Kingdom: 0.75 mm², ordinary PVC above 3 kg, two cores, 13 A fuse', () => {
    const lead = choose('UK', { voltageV: 230, powerW: 1200 })
    expect(lead.conductor.size).toBe('0.75 mm2')
    expect(lead.cords.types.map(({ id }) => id)).toEqual(['H05VV-F', 'H05VVH2-F', 'H05RR-F', 'H05RN-F', 'H07RN-F'])
    expect([lead.cores, lead.fuse]).toEqual([2, { ratingA: 13, colour: 'brown' }])
    expect(lead.conductors.map(({ colour }) => colour)).toEqual(['brown', 'blue'])
    expect(lead.remarks.join(' ')).toMatch(/0.75 mm² behind a 13 A fuse is allowed at a restricted length only/)
  })
  it('for a light machine of 500 W light PVC will do, and the fuse is 3 A', () => {
    const lead = choose('UK', { voltageV: 230, powerW: 500, massKg: 2.5 })
    expect(lead.cords.types.map(({ id }) => id)).toContain('H03VV-F')
    expect(lead.fuse?.ratingA).toBe(3)
  })
  it('where the mass is not known, no light PVC is named, and that is said', () => {
    const lead = choose('EU', { voltageV: 230, powerW: 900, massKg: null })
    expect(lead.cords.types.map(({ id }) => id)).not.toContain('H03VV-F')
    expect(lead.remarks.join(' ')).toMatch(/mass is not known/)
  })
  it('class I takes a third core; outside the United Kingdom there is no fuse in the plug', () => {
    const lead = choose('EU', { voltageV: 230, powerW: 1200, class: 'I' })
    expect(lead.conductors.map(({ is }) => is)).toEqual(['line', 'neutral', 'protective earth'])
    expect([lead.cores, lead.fuse]).toEqual([3, null])
    expect(lead.plug.name).toMatch(/CEE 7\/7/)
  })
  it('for 12 A in the United States: 17 AWG, SVT among the types, polarised plug, white to the wide blade', () => {
    const lead = choose('US', { voltageV: 120, currentA: 12 })
    expect(lead.conductor.size).toBe('17 AWG')
    expect(lead.cords.types.map(({ id }) => id)).toEqual(['SVT', 'SV', 'SJT', 'SJ'])
    expect(lead.plug.name).toMatch(/polarised/)
    expect(lead.conductors[1].terminal).toMatch(/wide blade/)
  })
  it('amperes on the plate go before watts', () => {
    const lead = choose('EU', { voltageV: 230, powerW: 1300, currentA: 6.2 })
    expect([lead.rated.currentA, lead.rated.isEstimated, lead.conductor.areaMm2]).toEqual([6.2, false, 1])
  })
  it('every part has a source that says how it was come by', () => {
    const lead = choose('UK', { voltageV: 230, powerW: 1200, class: 'I' })
    const sources = [
      lead.rated.source,
      ...lead.conductor.sources,
      lead.cords.source,
      lead.plug.source,
      lead.fuseSource,
      ...lead.conductorSources,
      ...lead.drop.sources,
    ]
    for (const { title, evidence } of sources) {
      expect(title).not.toBe('')
      expect(evidenceSchema.options).toContain(evidence)
    }
  })
})

describe('cables on a list', () => {
  const fits = (more: object, plate: object = {}) =>
    choose('UK', { voltageV: 230, powerW: 1200, ...plate }, { cables: [cable(more)] }).cables[0]
  it('one that would do, to be cut', () =>
    expect(fits({})).toMatchObject({ kind: 'would-do', reasons: [], unknown: [], care: ['Cut it to 6 m'] }))
  it.each([
    [{ size: '0.5 mm2' }, /0.5 mm² is too thin: 0.75 mm² is the least/],
    [{ type: 'H03VV-F' }, /for machines up to 3 kg, and this one has 6 kg/],
    [{ type: 'SVT' }, /of another region/],
    [{ type: 'H03VH-H' }, /too light/],
    [{ lengthM: 5 }, /5 m, and 6 m are wanted/],
    [{ condition: 'hard-or-sticky' }, /hard or sticky/],
    [{ condition: 'cut-or-flattened' }, /cut or flattened/],
    [{ condition: 'joined' }, /joint or tape/],
    [{ hasOldColours: true }, /may no longer be sold/],
  ])('one that would not: %j', (more, why) => {
    const fit = fits(more)
    expect(fit.kind).toBe('would-not-do')
    expect(fit.reasons.join(' ')).toMatch(why)
  })
  it('two cores are never enough for class I', () =>
    expect(fits({}, { class: 'I' }).reasons.join(' ')).toMatch(/no protective earth/))
  it('a third core on class II is to be left loose, never as an earth', () => {
    const fit = fits({ cores: 3 })
    expect(fit.kind).toBe('would-do')
    expect(fit.care.join(' ')).toMatch(/never as an earth/)
  })
  it.each([
    [{ size: null }, /measure its resistance and its length/],
    [{ size: '0.6' }, /none of the table/],
    [{ type: null }, /printed or moulded/],
    [{ type: 'XYZ' }, /“XYZ” is not known here/],
    [{ cores: null }, /number of cores/],
    [{ lengthM: null }, /length/],
    [{ condition: 'not-looked-at' }, /through your fingers/],
  ])('one of which too little is known: %j', (more, what) => {
    const fit = fits(more)
    expect(fit.kind).toBe('not-known')
    expect(fit.unknown.join(' ')).toMatch(what)
  })
  it('light PVC waits for the mass of the machine', () =>
    expect(fits({ type: 'H03VV-F' }, { massKg: null })).toMatchObject({ kind: 'not-known' }))
})

describe('the copper of a salvaged cable', () => {
  const measure = (ohm: number, instrument: string, spreadOhm: number, more: object = {}) =>
    answerOf('cable', {
      size: '0.75 mm2',
      lengthM: 8,
      reading: { value: ohm, leads: { kind: 'nulled', spreadOhm } },
      instrument,
      ...more,
    })
  it('0.42 Ω where 0.208 Ω is the most that 8 m of 0.75 mm² can have', () => {
    const verdict = measure(0.42, 'four-digit-multimeter', 0.02)
    expect(verdict.kind).toBe('too-much')
    expect(verdict.sentence).toBe(
      '0.42 Ω where 0.208 Ω is the most that 8 m of 0.75 mm² can have: thinner copper, copper over another metal, or a bad joint.',
    )
    expect(verdict.copperMm2?.to).toBeLessThan(0.5)
  })
  it('a cheap meter cannot tell at that length', () =>
    expect(measure(0.42, 'budget-multimeter', 0.1)).toMatchObject({ kind: 'cannot-tell' }))
  it('sound copper by the table, and the sizes it could be', () => {
    const verdict = measure(0.19, 'low-ohm-tester', 0.01)
    expect(verdict.kind).toBe('as-claimed')
    expect(verdict.couldBe).toEqual(['0.75 mm2'])
  })
  it('the less sure the meter, the more sizes it could be', () =>
    // ±(0.8 % + 5 × 0.1) and ±0.1: U = 0.59 Ω, so anything from nothing to 0.78 Ω; derived by hand.
    expect(measure(0.19, 'budget-multimeter', 0.1)).toMatchObject({
      couldBe: ['0.5 mm2', '0.75 mm2', '1 mm2', '1.25 mm2', '1.5 mm2', '2.5 mm2'],
      copperMm2: { to: null },
    }))
  it('less than copper can have is a finding too: the length is wrong, or the copper thicker', () =>
    expect(measure(0.1, 'low-ohm-tester', 0.01)).toMatchObject({
      kind: 'too-little',
      // Maxima of 8 m: 0.125 and 0.106 Ω; 0.156 Ω of 1 mm² is out of reach of 0.1 ± 0.027 Ω. Derived.
      couldBe: ['1.25 mm2', '1.5 mm2'],
    }))
  it('a broken core is more than any copper', () => {
    const reading = { shown: 'above', value: null }
    const verdict = answerOf('cable', { size: '0.75', lengthM: 8, reading, instrument: 'budget-multimeter' })
    expect(verdict).toMatchObject({ kind: 'too-much', copperMm2: null })
    expect(verdict.sentence).toMatch(/^More than 40 MΩ where/)
  })
  it('warm copper may have more, and so may two cores and contacts', () => {
    const most = (more: object) => measure(0.2, 'low-ohm-tester', 0.01, more).maximumOhm
    // 0.208 Ω × 274.5 / 254.5 at 40 °C; twice for the loop; 0.1 Ω for contacts (from memory).
    expect(most({ temperatureC: 40 })).toBeCloseTo(0.2243, 4)
    expect(most({ conductors: 2 })).toBeCloseTo(0.416, 9)
    expect(most({ hasContacts: true })).toBeCloseTo(0.308, 9)
  })
})

describe('a reel', () => {
  it('adds its contacts to what a sound earth reads, and nothing to the limit', () => {
    const at = (hasReel: boolean) =>
      answerOf('expected-earth', { profile: 'uk-cop-5.v1', lead: { lengthM: 8, size: '0.75' }, hasReel })
    expect(at(true).readsToOhm).toBeGreaterThan(at(false).readsToOhm)
    expect(at(true).limit).toEqual(at(false).limit)
  })
})
