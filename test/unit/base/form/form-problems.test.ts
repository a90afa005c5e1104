import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { parse } from '../../../../src/base/parse.ts'
import { problemText } from '../../../../src/base/problem.ts'

const move = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('check'), minutes: z.number().min(0).max(90), seenOn: z.iso.date().optional() }),
  z.strictObject({ kind: z.literal('repair'), costMinor: z.int().min(0), by: z.enum(['me', 'friend']).default('me') }),
])
const form = z.strictObject({
  name: z.string().min(1).max(10),
  moves: z.array(move).min(1).max(2),
  held: z.union([z.strictObject({ ohm: z.number().positive() }), z.strictObject({ open: z.boolean() })]).optional(),
  reach: z.union([z.number(), z.string()]).optional(),
  months: z.array(z.int().min(1, 'a month is 1 to 12').max(12, 'a month is 1 to 12')).optional(),
  prices: z.record(z.string(), z.strictObject({ priceMinor: z.number().nullable() })).optional(),
  at: z.iso.datetime().optional(),
  tints: z.partialRecord(z.enum(['red', 'green']), z.number()).optional(),
  ids: z.record(z.string().regex(/^[a-z]+$/, 'an id is small letters'), z.number()).optional(),
  length: z
    .number()
    .refine((m) => m < 9, 'No lead is as long as that. Measure it again')
    .optional(),
})

const sound = { name: 'Green', moves: [{ kind: 'check', minutes: 3 }] }
const refusals = (change: object): readonly string[] => {
  const result = parse(form, { ...sound, ...change }, 'job')
  return result.kind === 'ok' ? [] : result.problems.map(problemText)
}

/** Our own sentences, so that a change of one is meant: no source outside says them. */
describe('a mistake of form in words', () => {
  it.each<readonly [string, object, readonly string[]]>([
    ['nothing wrong', {}, []],
    [
      'a missing field',
      { name: undefined },
      ['name: “name” is missing. Write it: a text in quotes of 1 to 10 characters.'],
    ],
    ['a number for a text', { name: 7 }, ['name: 7 is not a text. Write a text in quotes of 1 to 10 characters.']],
    ['an empty text', { name: '' }, ['name: The text is empty. Write a text of 1 to 10 characters.']],
    [
      'a text too long',
      { name: 'x'.repeat(11) },
      ['name: The text is 11 characters long. Write it shorter: at most 10 characters.'],
    ],
    ['an object for a list', { moves: {} }, ['moves: An object is not a list. Write a list in [ ] of 1 to 2 entries.']],
    [
      'a field too many',
      { mood: 1 },
      [
        'job: There is no field “mood” here. Take it out; the fields here are name, moves, held, reach, months, prices, at, tints, ids, length.',
      ],
    ],
    ['a misspelt field', { reech: 1 }, ['job: There is no field “reech” here. Write “reach”.']],
    [
      'out of range, in the branch that was meant',
      { moves: [{ kind: 'check', minutes: 91 }] },
      ['moves[0].minutes: 91 is more than 90. Write a number from 0 to 90, in minutes.'],
    ],
    [
      'a part of a whole number',
      { moves: [{ kind: 'repair', costMinor: 0.5 }] },
      [
        'moves[0].costMinor: 0.5 is not a whole number. Write a whole number of 0 or more, in minor units such as pence, 450 for 4.50.',
      ],
    ],
    [
      'a number in quotes',
      { moves: [{ kind: 'check', minutes: '3' }] },
      [
        'moves[0].minutes: "3" is a text, because of its quotes. Write a number from 0 to 90, in minutes, without quotes.',
      ],
    ],
    ['no kind', { moves: [{ minutes: 3 }] }, ['moves[0].kind: “kind” is missing. Write it: one of check, repair.']],
    [
      'a misspelt kind',
      { moves: [{ kind: 'chek', minutes: 3 }] },
      ['moves[0].kind: “chek” is none of check, repair. Write “check”.'],
    ],
    [
      'an unknown kind',
      { moves: [{ kind: 'polish' }] },
      ['moves[0].kind: “polish” is none of check, repair. Use one of these.'],
    ],
    [
      'not in the list',
      { moves: [{ kind: 'repair', costMinor: 1, by: 'frend' }] },
      ['moves[0].by: “frend” is none of me, friend. Write “friend”.'],
    ],
    [
      'a day that is none',
      { moves: [{ kind: 'check', minutes: 1, seenOn: 'today' }] },
      ['moves[0].seenOn: “today” is not a day. Write a day such as 2026-03-31.'],
    ],
    [
      'a day that does not exist',
      { moves: [{ kind: 'check', minutes: 1, seenOn: '2026-02-30' }] },
      ['moves[0].seenOn: “2026-02-30” is no day of the calendar. Write a day such as 2026-03-31.'],
    ],
    [
      'a time that is none',
      { at: 'noon' },
      ['at: “noon” is not a time in UTC. Write a time in UTC such as 2026-03-31T12:00:00Z.'],
    ],
    [
      'the one of two forms that was meant',
      { held: { ohm: 0 } },
      ['held.ohm: 0 is not above 0. Write a number above 0, in ohms.'],
    ],
    [
      'none of two forms',
      { held: { amps: 1 } },
      ['held: It has none of the forms it may have. Write {"ohm": …} or {"open": …}.'],
    ],
    [
      'neither number nor text',
      { reach: [] },
      ['reach: A list cannot stand here. Write a number, or a text with its unit.'],
    ],
    [
      'a rule of its own',
      { months: [4, 13] },
      ['months[1]: 13 is not right: a month is 1 to 12. Write a whole number from 1 to 12.'],
    ],
    ['a mend of its own', { length: 9 }, ['length: No lead is as long as that. Measure it again.']],
    [
      'under a name with a stop',
      { prices: { 'motor.a': { priceMinor: 'x' } } },
      [
        'prices["motor.a"].priceMinor: “x” is not a number. Write a number, in minor units such as pence, 450 for 4.50, or null.',
      ],
    ],
    ['a misspelt name', { tints: { gren: 1 } }, ['tints: There is no field “gren” here. Write “green”.']],
    [
      'a name of the wrong form',
      { ids: { A: 1 } },
      ['ids.A: “A” is not right: an id is small letters. Change it so that this holds.'],
    ],
    [
      'a list too long',
      { moves: [sound.moves[0], sound.moves[0], sound.moves[0]] },
      ['moves: The list has 3 entries. Write at most 2.'],
    ],
    [
      'two mistakes',
      { name: 1, mood: 1 },
      [
        'name: 1 is not a text. Write a text in quotes of 1 to 10 characters.',
        'job: There is no field “mood” here. Take it out; the fields here are name, moves, held, reach, months, prices, at, tints, ids, length.',
      ],
    ],
  ])('%s', (_name, change, expected) => {
    expect(refusals(change)).toEqual(expected)
  })

  it.each([
    [undefined, 'There is no job'],
    [null, 'Null is not an object'],
    ['x', '“x” is not an object'],
  ])('%j in its place', (input, what) => {
    const result = parse(form, input, 'job')
    expect(result.kind === 'refused' ? result.problems[0] : null).toMatchObject({ where: 'job', what })
  })
})
