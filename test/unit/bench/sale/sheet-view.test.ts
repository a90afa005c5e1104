import { describe, expect, test } from 'vitest'
import type { NoteContentInput } from '../../../../src/bench/note.ts'
import { sheetPaper } from '../../../../src/bench/sale/sheet-paper.ts'
import type { SaleSheetView, SectionView } from '../../../../src/bench/sale/sheet-view.ts'
import type { SheetSection } from '../../../../src/bench/sale/worded-note.ts'
import { cameIn, documentOf, gauge, provedSafe, ranWell, repaired, sheetOf, upright } from './sheet-jobs.ts'

const hose = upright.parts.find(({ id }) => id.includes('hose'))!
const fault = upright.faults[0]
const cover = upright.covers[0].id
const mended = upright.repairs.find(({ removes }) => removes.includes(fault.id))!
const photoOf = (letter: string): string => letter.repeat(64)

const sheet = (...contents: readonly NoteContentInput[]): SaleSheetView => sheetOf(documentOf([cameIn(), ...contents]))
const section = (view: SaleSheetView, wanted: SheetSection): SectionView =>
  view.sections.find((one) => one.section === wanted)!
const text = (view: SaleSheetView, wanted: SheetSection): string => section(view, wanted).text

const soldWithProof: readonly NoteContentInput[] = [
  { kind: 'confirmed', fault: fault.id },
  { kind: 'repaired', repair: mended.id, option: mended.options[0].id, minutes: 10, costMinor: 250 },
  { kind: 'cleaned', task: 'wash-casing' },
  { kind: 'cleaned', task: 'new-bag' },
  gauge(19.4),
  ...provedSafe,
  { kind: 'listed', priceMinor: 4500, where: '', grade: 'B' },
  { kind: 'left', exit: 'sell-working', receivedMinor: 4200 },
]
const spares: readonly NoteContentInput[] = [
  { kind: 'confirmed', fault: fault.id },
  { kind: 'left', exit: 'sell-for-spares', receivedMinor: 900 },
]
const proofVoid: readonly NoteContentInput[] = [
  ...provedSafe,
  { kind: 'opened', cover, minutes: 1 },
  { kind: 'closed', cover, minutes: 1 },
]
const stories: readonly (readonly [string, readonly NoteContentInput[]])[] = [
  ['nothing but that it came in', []],
  ['sold working with proof', soldWithProof],
  ['for spares', spares],
  ['parts missing', [{ kind: 'took-off', part: hose.id, shelfPart: 's1', costMinor: 100 }, ranWell]],
  ['proof void', proofVoid],
  [
    'sold working without proof',
    [ranWell, { kind: 'left', exit: 'sell-working', receivedMinor: 3000, safety: 'The buyer has it checked first' }],
  ],
  [
    'graded and tried',
    [
      ranWell,
      { kind: 'graded', part: hose.id, when: 'after', grade: 'C', text: 'sun has faded it' },
      { kind: 'tried', function: 'height', result: 'bad' },
      { kind: 'history', ageYears: 12, wear: 'heavy' },
    ],
  ],
  [
    'repaired with a part off the shelf',
    [{ ...repaired('belt', 'new'), shelfPart: 's1' } as NoteContentInput, ranWell],
  ],
]

describe('the words of the notes', () => {
  test.each(stories)('claim nothing that they do not bear out: %s', (_name, contents) => {
    const wrong = sheet(...contents).sections.flatMap(({ claims }) =>
      claims.filter(({ verdict }) => verdict !== 'supported'),
    )
    expect(wrong.map(({ words, why }) => `${words}: ${why}`)).toEqual([])
  })

  test('sold working with proof: the fault, the repair, each reading of the proof with its limit', () => {
    const view = sheet(...soldWithProof)
    expect(view.standing).toBe('working')
    expect(text(view, 'title')).toContain('working, repaired, safety checks passed')
    expect(text(view, 'wrong').toLowerCase()).toContain(fault.name.toLowerCase())
    expect(text(view, 'done').toLowerCase()).toContain(mended.name.toLowerCase())
    // The readings as they were entered.
    expect(text(view, 'tested')).toContain('120 MΩ')
    expect(text(view, 'tested')).toContain('0.05 mA')
    expect(text(view, 'tested')).toContain('19.4 kPa')
    expect(text(view, 'closing')).toContain('safety record comes with it')
    expect(view.price?.text).toBe('£45.00')
  })

  test('for spares: it says so, what is not mended, and is not to be plugged in', () => {
    const view = sheet(...spares)
    expect(view.standing).toBe('spares')
    expect(text(view, 'title')).toContain('for spares or repair')
    expect(text(view, 'wrong')).toContain('Not mended')
    expect(text(view, 'closing')).toContain('Not to be plugged in')
    const { low, high } = upright.worth.sparesMinor
    expect(view.price!.minor).toBeGreaterThanOrEqual(low)
    expect(view.price!.minor).toBeLessThanOrEqual(high)
  })

  /** What an advert calls the build of a vacuum cleaner: trade words (common practice). */
  test.each([
    [
      'Dad’s bagless upright from number 12, garage',
      upright.worth.priceKind,
      'Grey bagless upright: not shown to work',
    ],
    ['Kitchen one, two motors', upright.worth.priceKind, 'Grey bagged upright: not shown to work'],
    ['Kitchen one, two motors', undefined, 'Grey vacuum cleaner: not shown to work'],
    ['Gran’s Mains Stick', undefined, 'Grey mains stick: not shown to work'],
  ])('of a blueprint of one’s own, “%s”, the trade’s words alone', (name, priceKind, title) => {
    const { priceKind: _, ...worth } = upright.worth
    const own = { ...upright, id: 'own-mine-1', name, worth: { ...worth, ...(priceKind === undefined ? {} : { priceKind }) } } // prettier-ignore
    const view = sheetOf(documentOf([cameIn({ blueprint: own.id })], own), own)
    expect(text(view, 'title')).toBe(title)
    expect(view.sections.map((one) => one.text).join()).not.toMatch(/Dad|Gran|[Kk]itchen|garage|number/)
  })

  test('parts missing and laid by are named', () => {
    const view = sheet({ kind: 'took-off', part: hose.id, shelfPart: 's1', costMinor: 100 })
    expect(text(view, 'with-it')).toContain(`Missing: ${hose.name.charAt(0).toLowerCase()}${hose.name.slice(1)}`)
  })

  test('a void proof is said to be void, and that insulation is not proven', () => {
    const view = sheet(...proofVoid)
    expect(text(view, 'tested')).toContain('The earlier checks are void')
    expect(text(view, 'tested')).toContain('nobody has proven that its insulation is sound')
    expect(text(view, 'title')).not.toContain('safety')
  })

  test('sold working without proof carries the reason that was given', () => {
    const view = sheet(ranWell, {
      kind: 'left',
      exit: 'sell-working',
      receivedMinor: 3000,
      safety: 'The buyer has it checked first',
    })
    expect(text(view, 'closing')).toContain('The buyer has it checked first')
  })

  test('a note struck out says nothing any more', () => {
    const view = sheet({ kind: 'confirmed', fault: fault.id }, { kind: 'struck', note: 'n2' })
    expect(text(view, 'wrong')).toContain('Nobody noted a cause')
  })

  test('photographs: the shots that sell in their order, each once, the last of each', () => {
    const shot = (photo: string, of: 'plate' | 'three-quarter'): NoteContentInput => ({
      kind: 'photo',
      photo,
      shot: of,
      when: 'after',
    })
    const view = sheet(shot(photoOf('a'), 'plate'), shot(photoOf('b'), 'three-quarter'), shot(photoOf('c'), 'plate'), {
      kind: 'photo',
      photo: photoOf('d'),
      when: 'before',
    })
    expect(view.photos.map(({ photo, shot: of }) => [photo[0], of])).toEqual([
      ['b', 'three-quarter'],
      ['c', 'plate'],
    ])
  })
})

describe('own words', () => {
  const own: NoteContentInput = { kind: 'worded', section: 'opening', text: 'A good old upright. Safety tested.' }

  test('stand in place of the notes’ words, which are kept beside them; a claim in them is marked', () => {
    const opening = section(sheet(own), 'opening')
    expect(opening.text).toBe('A good old upright. Safety tested.')
    expect(opening.generated).toContain(upright.name.split(',')[0])
    expect(opening.own?.was).toBeNull()
    expect(opening.claims.map(({ words, verdict }) => [words, verdict])).toEqual([['Safety tested', 'unsupported']])
  })

  test('empty text brings the notes’ words back', () => {
    const opening = section(sheet(own, { kind: 'worded', section: 'opening', text: '' }), 'opening')
    expect(opening.own).toBeNull()
    expect(opening.text).toBe(opening.generated)
  })

  test('when the notes say something else by now, both are there', () => {
    const wrong = section(
      sheet({ kind: 'worded', section: 'wrong', text: 'It was dead.' }, { kind: 'confirmed', fault: fault.id }),
      'wrong',
    )
    expect(wrong.text).toBe('It was dead.')
    expect(wrong.own?.was).toContain('Nobody noted a cause')
    expect(wrong.generated).toContain('Found:')
  })

  test('editing one section leaves the others as they were', () => {
    const before = sheet(ranWell)
    const after = sheet(ranWell, own)
    const rest = (view: SaleSheetView) =>
      view.sections.filter((one) => one.section !== 'opening').map((one) => one.text)
    expect(rest(after)).toEqual(rest(before))
  })
})

describe('the sheet for a buyer', () => {
  test('bears a dagger at each claim that no note bears out, and says what it means', () => {
    const paper = sheetPaper(sheet({ kind: 'worded', section: 'opening', text: 'Safety tested, like new.' }))
    expect(paper.sections[0]?.lines).toEqual(['Safety tested †, like new †.'])
    expect(paper.daggerWords).toContain('†')
  })

  test('has no dagger where the notes bear all of it out', () => {
    const paper = sheetPaper(sheet(...soldWithProof))
    expect(JSON.stringify(paper)).not.toContain('†')
  })
})
