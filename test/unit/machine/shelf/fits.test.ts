import { describe, expect, it } from 'vitest'
import { blueprintById } from '../../../../src/blueprint/library.ts'
import { partKinds, type SpecField } from '../../../../src/facts/part-kinds.ts'
import { partFit } from '../../../../src/machine/index.ts'
import { partKindOf } from '../../../../src/blueprint/part-kind-of.ts'
import type { Spare, SpareWanted, Spec } from '../../../../src/machine/shelf/spare.ts'

const blueprint = blueprintById('bagged-upright-two-motors')!
const earthed = blueprintById('tub-by-pass-earthed')!
const upright: SpareWanted = { blueprint, plate: { ...blueprint.plate, massKg: 7 }, region: 'UK' }
const tub: SpareWanted = { blueprint: earthed, plate: earthed.plate, region: 'UK' }

const spare = (part: string, spec: Spec, over: Partial<Spare> = {}): Spare => ({
  name: 'A spare',
  partKind: partKindOf(part),
  spec,
  condition: 'tested',
  wasPart: null,
  ...over,
})
const kindOf = (wanted: SpareWanted, part: string, spec: Spec, over: Partial<Spare> = {}) =>
  partFit(wanted, part, spare(part, spec, over))?.kind
const reasons = (wanted: SpareWanted, part: string, spec: Spec, over: Partial<Spare> = {}) =>
  (partFit(wanted, part, spare(part, spec, over))?.reasons ?? []).join('; ')

/** 10 m of 1 mm² on a class II machine of 1,200 W and 7 kg: ordinary PVC. */
const goodFlex = { lengthM: 10, areaMm2: 1, cores: 2, type: 'H05VV-F', colours: 'brown and blue' }

describe('measures of a spare', () => {
  const parts = ['suction-motor', 'carbon-brushes', 'belt', 'brush-roll', 'hose', 'pre-motor-filter', 'board']
  const cases = parts.flatMap((part) => {
    const fields: readonly SpecField[] = partKinds[partKindOf(part)].fields
    return fields.filter(({ tolerance }) => tolerance > 0).map((field) => [part, field] as const)
  })

  it.each(cases)('of %s, %o, fit up to the tolerance and not beyond it', (part, field) => {
    const measured = { [field.id]: 200 }
    const at = (share: number) => partFit({ ...upright, measured }, part, spare(part, { [field.id]: 200 * share }))!
    for (const sign of [1, -1]) {
      expect(at(1 + sign * field.tolerance * 0.99).reasons).toEqual([])
      const [reason = ''] = at(1 + sign * field.tolerance * 1.01).reasons
      expect(reason).toContain(field.name)
      expect(reason).toContain('200')
    }
  })

  it('a motor is asked for its share of the plate, and what nobody knows of it is named', () => {
    const fit = partFit(upright, 'suction-motor', spare('suction-motor', { powerW: 1080, voltageV: 230 }))!
    expect(fit.kind).toBe('may-fit')
    expect(fit.agrees).toEqual(['Voltage', 'Power'])
    expect(fit.unknown).toEqual(['Diameter', 'Height', 'Mount'])
    expect(reasons(upright, 'suction-motor', { powerW: 600 })).toBe(
      'Power: this one has 600 W, and 1,080 W are wanted, give or take 15 %',
    )
  })

  it('all measured and alike, it fits', () => {
    const all = { voltageV: 230, powerW: 1080, diameterMm: 105, heightMm: 130, mount: 'Rubber ring' }
    expect(kindOf({ ...upright, measured: all }, 'suction-motor', { ...all, mount: 'rubber  ring' })).toBe('fits')
  })

  it('a switch may carry more than the machine draws, never less', () => {
    expect(reasons(upright, 'mains-switch', { currentA: 16, poles: 2 })).toBe('')
    expect(reasons(upright, 'mains-switch', { currentA: 2 })).toMatch(/^Current: this one has 2 A/)
  })

  it('is another thing when it was another part of such a machine', () => {
    expect(kindOf(upright, 'casing', {}, { wasPart: 'sole-plate' })).toBeUndefined()
    expect(kindOf(upright, 'sole-plate', {}, { wasPart: 'sole-plate' })).toBe('may-fit')
    expect(kindOf(upright, 'suction-motor', {}, { partKind: 'hose' })).toBeUndefined()
  })
})

/** Sizes, types and cores as IEC 60335-1 and BS 6500 have them, by the tables of the lead rules (facts/cords.ts). */
describe('a flex', () => {
  it('fits when size, type, cores, length, condition and colours are right', () => {
    expect(kindOf(upright, 'flex', goodFlex)).toBe('fits')
  })

  it.each(Object.keys(goodFlex))('never fits while its %s is not known', (id) => {
    const { [id as keyof typeof goodFlex]: _, ...rest } = goodFlex
    expect(kindOf(upright, 'flex', rest as Spec)).toBe('may-fit')
  })

  it('never fits untested, and is refused worn', () => {
    expect(kindOf(upright, 'flex', goodFlex, { condition: 'untested' })).toBe('may-fit')
    expect(kindOf(upright, 'flex', goodFlex, { condition: 'worn' })).toBe('does-not-fit')
  })

  it('too thin is refused with the clause', () => {
    expect(reasons(upright, 'flex', { ...goodFlex, areaMm2: 0.5 })).toMatch(/0\.5 mm² is too thin.*60335-1/)
  })

  it('of a light type on a heavy machine, or of another region, is refused with the clause', () => {
    expect(reasons(upright, 'flex', { ...goodFlex, type: 'H03VV-F' })).toMatch(/up to 3 kg.*EN 60335-1/)
    expect(reasons(upright, 'flex', { ...goodFlex, type: 'SJT' })).toMatch(/another region/)
  })

  it('of two cores is refused on class I, and three cores are not refused on class II', () => {
    expect(reasons(tub, 'flex', goodFlex)).toMatch(/2 cores, and 3 are needed.*27\.1/)
    expect(reasons(upright, 'flex', { ...goodFlex, cores: 3 })).toBe('')
  })

  it('may be somewhat shorter than the one it had, not more', () => {
    expect(kindOf(upright, 'flex', { ...goodFlex, lengthM: 7.01 })).toBe('fits')
    expect(reasons(upright, 'flex', { ...goodFlex, lengthM: 6.9 })).toBe(
      '6.9 m, and at least 7 m of the 10 m it had are wanted; a lead is not joined',
    )
  })

  it('with colours of former times is refused; green and yellow is the earth of today', () => {
    expect(reasons(upright, 'flex', { ...goodFlex, colours: 'red and black' })).toMatch(/colours/)
    const three = { ...goodFlex, cores: 3, colours: 'brown, blue, green and yellow' }
    expect(reasons(tub, 'flex', three)).toBe('')
  })

  it('is never said to fit where the plate is of another mains than the region', () => {
    expect(kindOf({ ...upright, region: 'US' }, 'flex', goodFlex)).toBe('may-fit')
  })
})

/** 3 A up to 700 W, 13 A above: BS 1363 practice, facts/fuses.ts. */
describe('a fuse', () => {
  const fuse = (powerW: number, ratingA: number, over: Partial<Spare> = {}) =>
    kindOf(
      { ...upright, plate: { ...upright.plate, powerW } },
      'plug-fuse',
      { ratingA, type: 'BS 1362' },
      { partKind: 'fuse', ...over },
    )

  it('goes by the power of the machine, not by the fuse that was in it', () => {
    expect([fuse(1200, 13), fuse(1200, 3), fuse(1200, 5)]).toEqual(['fits', 'does-not-fit', 'does-not-fit'])
    expect([fuse(600, 3), fuse(600, 13)]).toEqual(['fits', 'does-not-fit'])
  })

  it('is measured first, and its standard is read off it', () => {
    expect(fuse(1200, 13, { condition: 'untested' })).toBe('may-fit')
    expect(kindOf(upright, 'plug-fuse', { ratingA: 13 }, { partKind: 'fuse' })).toBe('may-fit')
  })
})
