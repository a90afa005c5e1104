import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { adaptBlueprint, parseEdits } from '../../../src/blueprint/adapt.ts'
import type { Edit } from '../../../src/blueprint/adapt-edits.ts'
import { editText } from '../../../src/blueprint/adapt-words.ts'
import { blueprintSchema, type Blueprint } from '../../../src/blueprint/schema.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const adapted = (...edits: readonly Edit[]): Blueprint => valueOf(adaptBlueprint(tinyBlueprint, edits))
const refusal = (...edits: readonly Edit[]) => {
  const result = adaptBlueprint(tinyBlueprint, edits)
  return result.kind === 'ok' ? [] : result.problems
}
const idsOf = (items: readonly { readonly id: string }[]): readonly string[] => items.map(({ id }) => id)
const one = <T extends { readonly id: string }>(items: readonly T[], id: string): T =>
  items.find((item) => item.id === id)!

/** The tiny blueprint with a capacitor across its motor, which nothing but its own look sees. */
const withCapacitor: Blueprint = blueprintSchema.parse({
  ...tinyBlueprint,
  parts: [...tinyBlueprint.parts, { id: 'capacitor', name: 'Capacitor', does: 'Quiets', group: 'electrical' }],
  circuit: [
    ...tinyBlueprint.circuit,
    { kind: 'capacitor', id: 'c', part: 'capacitor', from: 'motor.a', to: 'motor.b', capacitanceF: 1e-7 },
  ],
})

describe('a part that is not there', () => {
  it('in series has its two ends joined, and all that hung on it goes', () => {
    const without = adapted({ kind: 'part-absent', part: 'switch' })
    expect(idsOf(without.circuit)).toEqual(['flex-l', 'flex-n', 'motor-lead', 'motor-coil', 'motor-leak'])
    expect(one(without.circuit, 'motor-lead').from).toBe('switch.in')
    expect(idsOf(without.points)).not.toContain('switch.out')
    expect(without.controls).toEqual([])
    expect(one(without.checks, 'pins-on').controls).toEqual({})
    expect(idsOf(without.faults)).not.toContain('switch-open')
    expect(idsOf(without.repairs)).not.toContain('change-switch')
  })

  it('across the supply is taken away', () => {
    const without = valueOf(adaptBlueprint(withCapacitor, [{ kind: 'part-absent', part: 'capacitor' }]))
    expect(without).toEqual(tinyBlueprint)
  })

  it('does as the edit says of its elements, where that can be', () => {
    const cut: Edit = { kind: 'part-absent', part: 'flex', elements: { 'flex-l': 'bridged', 'flex-n': 'bridged' } }
    expect(adapted(cut).supply).toEqual({ line: 'plug.l', neutral: 'plug.n' })
    const across = adaptBlueprint(withCapacitor, [
      { kind: 'part-absent', part: 'capacitor', elements: { c: 'bridged' } },
    ])
    expect(across).toMatchObject({ kind: 'refused', problems: [{ code: 'supply-shorted' }] })
  })

  it('that the machine cannot do without is refused, with what to do', () => {
    expect(refusal({ kind: 'part-absent', part: 'motor' })).toMatchObject([
      { code: 'no-proof-left', mend: expect.stringContaining('another blueprint') as string },
    ])
  })

  it('that a check before running cannot do without is refused too', () => {
    const copy = structuredClone(tinyBlueprint)
    copy.parts.push({ id: 'frame', name: 'Frame', does: 'Is metal', group: 'mechanical' })
    one(copy.circuit, 'motor-leak').part = 'frame'
    const result = adaptBlueprint(copy, [{ kind: 'part-absent', part: 'frame' }])
    expect(result).toMatchObject({ kind: 'refused', problems: [{ code: 'check-before-running-lost' }] })
  })

  it('takes along the parts that are sold with it', () => {
    const nested = structuredClone(withCapacitor)
    one(nested.parts, 'capacitor').within = 'switch'
    const without = valueOf(adaptBlueprint(nested, [{ kind: 'part-absent', part: 'switch' }]))
    expect(idsOf(without.parts)).toEqual(['plug', 'flex', 'motor'])
  })
})

describe('a part elsewhere', () => {
  it('takes its probe points and its repairs along', () => {
    const moved = adapted({ kind: 'part-moved', part: 'motor', behind: 'back-cover' })
    expect(one(moved.points, 'motor.a').behind).toBe('back-cover')
    expect(one(moved.parts, 'motor').behind).toBe('back-cover')
    expect(one(moved.repairs, 'change-motor').coversOff).toEqual(['back-cover'])
    expect(one(moved.checks, 'look-brushes').coversOff).toEqual(['back-cover'])
    expect(one(moved.points, 'switch.out').behind).toBeUndefined()
  })

  it('behind none is reached at once', () => {
    const moved = adapted({ kind: 'part-moved', part: 'motor', behind: null })
    expect(one(moved.points, 'motor.a')).not.toHaveProperty('behind')
    expect(one(moved.repairs, 'change-motor').coversOff).toEqual([])
  })
})

describe('covers', () => {
  it('that are not there leave what was behind them to the cover before', () => {
    const without = adapted({ kind: 'cover-absent', cover: 'motor-cover' })
    expect(idsOf(without.covers)).toEqual(['back-cover'])
    expect(one(without.points, 'motor.a').behind).toBe('back-cover')
    expect(one(without.checks, 'look-brushes').coversOff).toEqual(['back-cover'])
    const bare = adapted({ kind: 'cover-absent', cover: 'motor-cover' }, { kind: 'cover-absent', cover: 'back-cover' })
    expect(bare.covers).toEqual([])
    expect(one(bare.parts, 'motor')).not.toHaveProperty('behind')
  })

  it('are held as the edit says, and what it leaves out stays', () => {
    const held = adapted({ kind: 'cover-fixings', cover: 'back-cover', fixings: [{ count: 2, kind: 'slot screw' }] })
    expect(one(held.covers, 'back-cover')).toMatchObject({
      fixings: [{ count: 2, kind: 'slot screw' }],
      openMin: 3,
      closeMin: 3,
    })
  })
})

describe('names and figures', () => {
  it('are those of the edits, the last one counting', () => {
    const changed = adapted(
      { kind: 'renamed', what: 'part', id: 'switch', name: 'Rocker' },
      { kind: 'renamed', what: 'part', id: 'switch', name: 'Foot switch' },
      { kind: 'renamed', what: 'control', id: 'handle', name: 'Foot' },
      { kind: 'check-how', check: 'flex-line', how: 'Pin to the foot' },
      { kind: 'part-note', part: 'motor', text: 'Mounts sag' },
      { kind: 'plate', powerW: 900 },
      { kind: 'fault-share', fault: 'motor-worn', perHundred: 12, saleShareIfLeft: 0.2 },
      { kind: 'repair-cost', repair: 'change-switch', option: 'new', costMinor: { low: 900, high: 1200 } },
    )
    expect(one(changed.parts, 'switch').name).toBe('Foot switch')
    expect(changed.controls[0]?.name).toBe('Foot')
    expect(one(changed.checks, 'flex-line').how).toBe('Pin to the foot')
    expect(one(changed.parts, 'motor').note).toBe('Mounts sag')
    expect(changed.plate).toEqual({ ...tinyBlueprint.plate, powerW: 900 })
    expect(one(changed.faults, 'motor-worn')).toMatchObject({
      rate: { perHundred: 12, source: { evidence: 'judgement' } },
      saleShareIfLeft: 0.2,
    })
    expect(one(changed.repairs, 'change-switch').options[0]).toMatchObject({
      costMinor: { low: 900, high: 1200 },
      minutes: 15,
    })
  })

  it('name a renamed part where a repair mends it on the way', () => {
    const copy = structuredClone(tinyBlueprint)
    const repair = one(copy.repairs, 'refit-flex')
    repair.removes.push('switch-open')
    repair.note = 'Does the handle switch too'
    const changed = valueOf(
      adaptBlueprint(copy, [{ kind: 'renamed', what: 'part', id: 'switch', name: 'Foot switch' }]),
    )
    expect(one(changed.repairs, 'refit-flex').note).toBe('Does the handle switch too Mends too: Foot switch.')
  })
})

describe('edits that cannot be made', () => {
  it.each<readonly [string, readonly Edit[], string, RegExp]>([
    ['an unknown part', [{ kind: 'part-absent', part: 'moter' }], 'unknown-part', /Write “motor”/],
    ['an unknown cover', [{ kind: 'part-moved', part: 'motor', behind: 'lid' }], 'unknown-cover', /back-cover/],
    [
      'an unknown option',
      [{ kind: 'repair-cost', repair: 'change-motor', option: 'new', minutes: 1 }],
      'unknown-option',
      /salvaged/,
    ],
    [
      "another part's element",
      [{ kind: 'part-absent', part: 'flex', elements: { 'motor-coil': 'bridged' } }],
      'unknown-element',
      /flex-l/,
    ],
    ['an edit that says nothing', [{ kind: 'plate' }], 'edit-says-nothing', /Say what/],
    [
      'a part both gone and moved',
      [
        { kind: 'part-absent', part: 'switch' },
        { kind: 'part-moved', part: 'switch', behind: 'back-cover' },
      ],
      'part-not-there',
      /Take one/,
    ],
    [
      'a part moved behind a cover that is gone',
      [
        { kind: 'part-moved', part: 'flex', behind: 'back-cover' },
        { kind: 'cover-absent', cover: 'back-cover' },
      ],
      'cover-not-there',
      /Take one/,
    ],
  ])('%s', (_name, edits, code, mend) => {
    const [problem] = refusal(...edits)
    expect(problem?.code).toBe(code)
    expect(problem?.mend).toMatch(mend)
  })

  it('whose outcome is no blueprint are refused with the part to take away as well', () => {
    const copy = structuredClone(tinyBlueprint)
    // The bulb's only sign is what the switch's own check shows.
    copy.parts.push({ id: 'bulb', name: 'Bulb', does: 'Glows', group: 'control' })
    copy.faults.push({
      ...structuredClone(one(copy.faults, 'switch-open')),
      id: 'bulb-out',
      part: 'bulb',
      name: 'Bulb out',
    })
    one(copy.repairs, 'change-switch').removes.push('bulb-out')
    one(copy.repairs, 'change-switch').note = 'The bulb comes with it'
    const result = adaptBlueprint(copy, [{ kind: 'part-absent', part: 'switch' }])
    expect(result).toMatchObject({
      kind: 'refused',
      problems: [
        { code: 'fault-not-revealed', mend: 'Say that “Bulb” is not there either, or keep what is not there' },
      ],
    })
  })
})

it('reads edits from a list and from a file of them, and says where one is wrong', () => {
  const edits = [{ kind: 'part-absent', part: 'switch' }]
  expect(parseEdits(edits)).toEqual({ kind: 'ok', value: edits })
  expect(parseEdits({ format: 'thrum-edits-1', edits })).toEqual({ kind: 'ok', value: edits })
  expect(parseEdits([{ kind: 'part-gone', part: 'switch' }])).toMatchObject({ kind: 'refused' })
})

it('says edits in words', () => {
  const words = (edit: Edit): string => editText(edit, tinyBlueprint)
  expect(words({ kind: 'part-absent', part: 'switch' })).toBe('Handle switch: not there')
  expect(words({ kind: 'part-moved', part: 'switch', behind: 'back-cover' })).toBe('Handle switch: behind “Back cover”')
  expect(
    words({ kind: 'cover-fixings', cover: 'back-cover', fixings: [{ count: 2, kind: 'slot screw' }], openMin: 1.5 }),
  ).toBe('Back cover: 2 × slot screw, 1.5 min to open')
  expect(editText({ kind: 'part-absent', part: 'switch' }, null)).toBe('switch: not there')
})

it('keeps the earth pin, and refuses to take it from a class I machine', () => {
  const earthed = structuredClone(tinyBlueprint)
  earthed.points.push({ id: 'plug.e', name: 'Earth pin', at: [0, 6] })
  earthed.parts.push({ id: 'earth-wire', name: 'Earth wire', does: 'Earths the metal', group: 'electrical' })
  earthed.circuit.push({
    ...structuredClone(one(earthed.circuit, 'flex-l')),
    id: 'earth',
    part: 'earth-wire',
    from: 'plug.e',
    to: 'metal',
  })
  earthed.supply.earth = 'plug.e'
  const without = (part: string) => valueOf(adaptBlueprint(earthed, [{ kind: 'part-absent', part }]))
  expect(without('switch').supply).toEqual({ line: 'plug.l', neutral: 'plug.n', earth: 'plug.e' })
  // With the wire gone nothing is at the pin: right for class II alone.
  expect(without('earth-wire').supply).toEqual({ line: 'plug.l', neutral: 'plug.n' })
  earthed.plate.protectionClass = 'I'
  expect(adaptBlueprint(earthed, [{ kind: 'part-absent', part: 'earth-wire' }])).toMatchObject({
    kind: 'refused',
    problems: [{ code: 'earth-lost' }],
  })
})
