import { describe, expect, test } from 'vitest'
import { jobOf } from '../../../../src/bench/job.ts'
import type { NoteContentInput } from '../../../../src/bench/note.ts'
import { claimsIn } from '../../../../src/bench/sale/claims.ts'
import { evidenceOf } from '../../../../src/bench/sale/evidence.ts'
import { partsIn } from '../../../../src/bench/sale/part-claims.ts'
import { blueprints } from '../../../../src/blueprint/library.ts'
import { functionById } from '../../../../src/machine/functions/functions-of.ts'
import { cameIn, documentOf, evidence, ranBadly, ranWell, repaired, sheetOf, upright } from './sheet-jobs.ts'

type Verdict = 'supported' | 'unsupported' | 'contradicted'
type Notes = readonly NoteContentInput[]
const graded = (part: string, grade: 'A' | 'C'): NoteContentInput => ({ kind: 'graded', part, when: 'after', grade })
const repair = (id: string, option: string): NoteContentInput => ({
  kind: 'repaired',
  repair: id,
  option,
  minutes: 20,
  costMinor: 500,
})
const bearings = repair('bearings-new', 'new')
const newMotor = repair('suction-motor-swap', 'new')
const roll = (shown: 'turns' | 'locked'): NoteContentInput => ({
  kind: 'reading',
  check: functionById(upright, 'roll-by-hand')!.check.id,
  result: { kind: 'grade', outcome: shown },
  minutes: 1,
})

/** Wordings of second-hand adverts as the trade writes them (common practice), in either order, one and many. */
const cases: readonly (readonly [claim: string, words: string, verdict: Verdict, notes: Notes])[] = [
  ['new-belt', 'a fresh belt put on', 'supported', [repaired('belt', 'new')]],
  ['new-belt', 'a fresh belt put on', 'unsupported', []],
  ['new-belt', 'Belt is changed', 'supported', [repaired('belt', 'new')]],
  ['new-belt', 'Belt is changed', 'unsupported', []],
  ['new-belt', 'The belt has been renewed', 'unsupported', [ranWell]],
  ['new-belt', 'flat belt, new', 'unsupported', []],
  ['new-filter', 'Filters are new', 'unsupported', []],
  ['new-filter', 'Filters are new', 'unsupported', [{ kind: 'cleaned', task: 'new-motor-filter' }]],
  [
    'new-filter',
    'Filters are new',
    'supported',
    [
      { kind: 'cleaned', task: 'new-motor-filter' },
      { kind: 'cleaned', task: 'new-exhaust-filter' },
    ],
  ],
  ['new-filter', 'new bag and filters', 'unsupported', [repaired('belt', 'new')]],
  ['new-filter', 'belt, filters and bag replaced', 'unsupported', []],
  ['new-bearings', 'Motor bearings replaced', 'supported', [bearings]],
  ['new-bearings', 'New motor bearings', 'unsupported', [newMotor]],
  ['new-motor', 'New motor', 'supported', [newMotor]],
  ['new-motor', 'New motor', 'unsupported', [bearings]],
  ['cleaned-brush-roll', 'Brush roll freed of hair', 'supported', [{ kind: 'cleaned', task: 'roll' }]],
  ['cleaned-brush-roll', 'Brush roll freed of hair', 'unsupported', [{ kind: 'cleaned', task: 'wash-casing' }]],
  ['cleaned-hose', 'washed and dried hose', 'supported', [{ kind: 'cleaned', task: 'wash-hose' }]],
  ['as-new-filter', 'Filters as new', 'unsupported', [graded('casing', 'A')]],
  ['as-new-casing', 'Casing like new', 'supported', [graded('casing', 'A')]],
  ['as-new-casing', 'Casing as new', 'contradicted', [graded('casing', 'C')]],
  ['works-brush-roll', 'Brush roll works', 'contradicted', [roll('locked')]],
  ['works-brush-roll', 'Brush roll turns', 'supported', [roll('turns')]],
  ['works-brush-roll', 'Brush roll tested', 'unsupported', []],
  ['works-motor', 'motor works', 'supported', [ranWell]],
  ['mended-hose', 'Hose mended', 'unsupported', []],
  ['new-flex', 'New flex', 'unsupported', [repair('flex-shorten-plug', 'new')]],
  ['new-flex', 'New flex', 'supported', [repair('flex-new', 'new')]],
  ['strong-suction', 'Suction like new', 'unsupported', [{ kind: 'listed', priceMinor: 1, where: '', grade: 'A' }]],
  ['looks', 'Like new', 'unsupported', [graded('casing', 'A')]],
  ['looks', 'Like new', 'supported', [graded('casing', 'A'), graded('hose', 'A')]],
]

describe('what is said of a part', () => {
  test.each(cases)('%s: “%s” is %s', (claim, words, verdict, notes) => {
    const marks = claimsIn(words, evidence(notes))
    expect(marks.map((mark) => [mark.claim, mark.verdict])).toContainEqual([claim, verdict])
    if (verdict !== 'supported') expect(marks.filter((mark) => mark.verdict === 'supported')).toEqual([])
  })

  test('each part of each blueprint is known by its own name and by the words of its id', () => {
    for (const blueprint of blueprints)
      for (const { id, name } of blueprint.parts)
        for (const words of [name, id.replaceAll('-', ' ')])
          expect(partsIn(`new ${words}`, blueprint).length, `${blueprint.id}: ${words}`).toBeGreaterThan(0)
  })

  test.each([
    'Needs a new belt',
    'The belt was not changed',
    'No new filter',
    'Filter fitted back',
    'Belt to be replaced',
    'Collection from the house with the new door bell and the long drive',
  ])('“%s” says nothing of a part that counts', (words) => {
    const marks = claimsIn(words, evidence([])).filter(({ claim }) => !claim.endsWith('-cover'))
    expect(marks).toEqual([])
  })

  test.each([
    ['New belt, long hose', ['new-belt']],
    ['10 m flex, fully working', ['working']],
    ['Cleaned, new bag', ['cleaned', 'new-bag']],
    ['Hose cleaned and tested', ['cleaned-hose', 'tested']],
    ['New belt works', ['new-belt', 'works-belt']],
    ['New HEPA filter', ['new-filter', 'hepa']],
    ['Fully tested with a new bag', ['tested', 'new-bag']],
  ])('“%s” claims %j', (words, claims) => {
    expect(
      claimsIn(words, evidence([]))
        .map(({ claim }) => claim)
        .toSorted(),
    ).toEqual(claims.toSorted())
  })

  test('two in one clause are two claims', () => {
    const marks = claimsIn('Belt and filter replaced', evidence([repaired('belt', 'new')]))
    expect(marks.map(({ claim, verdict }) => [claim, verdict])).toEqual([
      ['new-belt', 'supported'],
      ['new-filter', 'unsupported'],
    ])
  })
})

test('a new piece on a part is no new part', () => {
  const withBoard = blueprints.find(({ repairs }) => repairs.some(({ id }) => id === 'triac-new'))!
  const boardIs = (id: string): string | undefined => {
    const { state, notes } = documentOf([cameIn({ blueprint: withBoard.id }), repair(id, 'new')], withBoard)
    const all = evidenceOf(state, notes, jobOf(state, notes, withBoard), 'UK')
    return claimsIn('New control board', all).find(({ claim }) => claim === 'new-board')?.verdict
  }
  expect([boardIs('triac-new'), boardIs('board-swap')]).toEqual(['unsupported', 'supported'])
})

describe('own words on the sheet', () => {
  const opening = (text: string, ...notes: Notes) =>
    sheetOf(documentOf([cameIn(), ...notes, { kind: 'worded', section: 'opening', text }]))
  const marksOf = (text: string, ...notes: Notes) =>
    opening(text, ...notes)
      .sections.find(({ section }) => section === 'opening')!
      .claims.map(({ words, verdict }) => [words, verdict])

  test('a false one is marked in every sentence, though the casing is graded A', () => {
    const text =
      'Brush roll freed of hair and a fresh belt put on. Filters as new. Belt is changed. Motor bearings replaced.'
    expect(marksOf(text, graded('casing', 'A'))).toEqual([
      ['Brush roll freed', 'unsupported'],
      ['fresh belt', 'unsupported'],
      ['Filters as new', 'unsupported'],
      ['Belt is changed', 'unsupported'],
      ['Motor bearings replaced', 'unsupported'],
    ])
  })

  test('work and history that no note speaks of is one’s own word, and never borne out', () => {
    const view = opening('Never used with pets. Gears greased. Collection only.')
    const { claims } = view.sections.find(({ section }) => section === 'opening')!
    expect(claims.map(({ words, verdict }) => [words, verdict])).toEqual([
      ['Never used with pets', 'own-words'],
      ['Gears greased', 'own-words'],
    ])
    expect([view.unsupported, view.ownWords]).toEqual([0, 2])
  })

  test('what a note speaks of is not marked', () => {
    expect(marksOf('Gears greased.', { kind: 'said', text: 'Greased the gears of the wheel' })).toEqual([])
  })

  test('the notes’ words are never told as one’s own', () => {
    const view = sheetOf(documentOf([cameIn(), ranBadly, repaired('belt', 'new', 'Gears greased')]))
    expect(view.ownWords).toBe(0)
  })
})

/** One of each kind: the others differ by plug, mains and earth. */
const kinds = blueprints.filter(({ id }) => !/-(?:120-v|earthed|moulded-plug)$/.test(id))

describe('the words of the notes about repairs', () => {
  test.each(kinds.map((blueprint) => [blueprint.id, blueprint] as const))(
    'are borne out by themselves, each by each of its ways: %s',
    (_id, blueprint) => {
      for (const { id, options } of blueprint.repairs)
        for (const { id: option } of options) {
          const came = cameIn({ blueprint: blueprint.id, plate: blueprint.plate })
          const view = sheetOf(
            documentOf([came, { kind: 'repaired', repair: id, option, minutes: 1, costMinor: 0 }], blueprint),
            blueprint,
          )
          const done = view.sections.find(({ section }) => section === 'done')!
          const wrong = done.claims.filter(({ verdict }) => verdict !== 'supported')
          expect(wrong.map(({ words, why }) => `${id} ${option}: ${words}: ${why}`)).toEqual([])
        }
    },
  )
})
