import { describe, expect, it } from 'vitest'
import { fixingFromText } from '../../../../src/bench/stripping/fixing-text.ts'
import { fixingWords, leftOverText, notClosedText } from '../../../../src/bench/stripping/fixing-words.ts'
import { fixingsText } from '../../../../src/bench/work-lines.ts'
import { staysInPlace } from '../../../../src/facts/fixing-kinds.ts'
import { blueprints } from '../../../../src/blueprint/library.ts'

/**
 * How fixings are called: common practice of the trade. `M4 × 16` is thread and length, as in the designations of ISO 4762 and
 * its like (from memory); TX, PH and PZ are the names of drives (from memory).
 */
describe('fixings in words', () => {
  it.each([
    [1, 'screw 4×16', 'one 4 × 16 screw'],
    [3, 'screw 4 x 16', 'three 4 × 16 screws'],
    [5, 'TX15 plastic 4 × 20', 'five TX15 plastic screws 4 × 20'],
    [2, 'PH2', 'two PH2 screws'],
    [4, 'machine screw M4 × 16', 'four machine screws M4 × 16'],
    [2, 'motor end screw', 'two motor end screws'],
    [3, 'quarter-turn catch or TX20', 'three quarter-turn catches or TX20'],
    [12, 'felt washer', 'twelve felt washers'],
    [13, 'felt washer', '13 felt washers'],
    [2, 'Velcro', 'two Velcro'],
  ])('%i of “%s”', (count, kind, words) => expect(fixingWords({ count, kind })).toBe(words))

  it.each([
    [[], ''],
    [[{ count: 1, kind: 'felt washer' }], 'One felt washer is left over'],
    [[{ count: 2, kind: 'felt washer' }], 'Two felt washers are left over'],
    [
      [
        { count: 1, kind: 'screw 4 × 16' },
        { count: 1, kind: 'felt washer' },
      ],
      'One 4 × 16 screw and a felt washer are left over',
    ],
    [
      [
        { count: 1, kind: 'circlip' },
        { count: 1, kind: 'M4 nut' },
        { count: 1, kind: 'circlip' },
        { count: 1, kind: 'E-clip' },
      ],
      'Two circlips, an M4 nut and an E-clip are left over',
    ],
  ])('left over: %o', (fixings, words) => expect(leftOverText(fixings)).toBe(words))

  /** Which fixings stay on the machine as they are let go: common practice of the trade. */
  it.each([
    ['catch', true],
    ['quarter-turn catch or PH2', true],
    ['turn catches', true],
    ['bayonet ring', true],
    ['quarter turn', true],
    ['lid levers', true],
    ['captive screw', true],
    ['latch', true],
    ['TX15 plastic 4 × 20', false],
    ['latch screw', false],
    ['screw and catch', false],
    ['PH2 and clamp ring', false],
    ['M4 nut', false],
    ['felt washer', false],
    ['spring', false],
    ['circlip', false],
    ['E-clip', false],
    ['loose clip', false],
    ['coin slot or TX10', false],
  ])('“%s” stays on the machine: %s', (kind, stays) => expect(staysInPlace(kind)).toBe(stays))

  it.each([
    [[{ count: 1, kind: 'catch' }], 'One catch of the bag door is not closed'],
    [[{ count: 2, kind: 'quarter-turn' }], 'Two quarter-turns of the bag door are not closed'],
  ])('not closed: %o', (fixings, words) => expect(notClosedText(fixings, 'bag door')).toBe(words))

  it('has a plural for every kind that a blueprint names', () => {
    const kinds = new Set(
      blueprints.flatMap(({ covers }) => covers.flatMap(({ fixings }) => fixings.map((f) => f.kind))),
    )
    expect(kinds.size).toBeGreaterThan(10)
    for (const kind of kinds)
      expect(fixingWords({ count: 2, kind }), kind).toMatch(/\b(?:screws|catches|rings|slots)\b/)
  })
})

describe('fixings as written', () => {
  it.each([
    ['3 × screw 4×16 in lid', { count: 3, kind: 'screw 4×16', place: 'lid' }],
    ['2 x TX15', { count: 2, kind: 'TX15', place: '' }],
    ['5×TX15 plastic 4 × 20 in pot 1', { count: 5, kind: 'TX15 plastic 4 × 20', place: 'pot 1' }],
    ['felt washer in the tin in the drawer', { count: 1, kind: 'felt washer in the tin', place: 'the drawer' }],
    ['circlip', { count: 1, kind: 'circlip', place: '' }],
  ])('%s', (written, fixing) => expect(fixingFromText(written)).toEqual({ kind: 'ok', value: fixing }))
  it.each(['', '0 × screw', '201 × screw', '3 × '])('refuses “%s”', (written) =>
    expect(fixingFromText(written)).toMatchObject({ kind: 'refused', problems: [{ code: 'not-a-fixing' }] }),
  )
  it('reads what the log shows', () => {
    const fixing = { count: 4, kind: 'TX20 plastic 4 × 25', place: 'pot 2' }
    expect(fixingFromText(fixingsText([fixing]))).toEqual({ kind: 'ok', value: fixing })
  })
})
