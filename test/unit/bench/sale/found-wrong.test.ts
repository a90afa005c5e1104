import { describe, expect, test } from 'vitest'
import type { NoteContentInput } from '../../../../src/bench/note.ts'
import type { SaleSheetView } from '../../../../src/bench/sale/sheet-view.ts'
import { sheetPaper } from '../../../../src/bench/sale/sheet-paper.ts'
import type { SheetSection } from '../../../../src/bench/sale/worded-note.ts'
import { blueprints } from '../../../../src/blueprint/library.ts'
import { functionFailures } from '../../../../src/facts/function-failures.ts'
import { functionById, functionsOf } from '../../../../src/machine/functions/functions-of.ts'
import { cameIn, documentOf, ranWell, sheetOf, upright } from './sheet-jobs.ts'

const sheet = (...contents: readonly NoteContentInput[]): SaleSheetView => sheetOf(documentOf([cameIn(), ...contents]))
const text = (view: SaleSheetView, wanted: SheetSection): string =>
  view.sections.find(({ section }) => section === wanted)!.text

const reading = (name: string, outcome: string): NoteContentInput => ({
  kind: 'reading',
  check: functionById(upright, name)!.check.id,
  result: { kind: 'grade', outcome },
  minutes: 1,
})
const locked = reading('roll-by-hand', 'locked')
const rollCleaned: NoteContentInput = {
  kind: 'repaired',
  repair: 'roll-clean',
  option: 'clean',
  minutes: 10,
  costMinor: 0,
}
const cover = upright.covers.find(({ id }) => id === 'back-cover')!
const screws = (count: number) => [{ count, kind: 'screw 4×16', place: 'lid' }]

describe('what was found wrong is on the sheet by itself', () => {
  test('a function that was read and is bad, as one says it to a buyer', () => {
    const view = sheet(locked)
    expect(text(view, 'wrong')).toContain('The brush roll does not turn: it is locked.')
    expect(text(view, 'wrong')).not.toContain('Nobody noted a cause')
  })

  test('a function that was tried and is bad, with one’s own words', () => {
    const view = sheet({ kind: 'tried', function: 'tools', result: 'bad', text: 'crevice tool split' })
    expect(text(view, 'wrong')).toContain('The tools are not all there, whole or clear: crevice tool split.')
  })

  test('not where it was tried again and is good', () => {
    expect(text(sheet(locked, reading('roll-by-hand', 'turns')), 'wrong')).not.toContain('brush roll')
  })

  test('repaired since: not as known bad, and not as good', () => {
    const view = sheet(locked, rollCleaned)
    expect(text(view, 'wrong')).not.toContain('brush roll does not')
    expect(text(view, 'tested')).toContain('Found bad, repaired since, and not tried again: brush roll by hand.')
    expect(text(sheet(locked, rollCleaned, ranWell), 'tested')).not.toContain('Found bad')
  })

  test('one that runs with a fault is not said to work, nor not to run', () => {
    const view = sheet(ranWell, locked)
    expect(view.standing).toBe('not-shown')
    expect(text(view, 'title')).toContain('runs, with faults')
    const own = sheet(ranWell, locked, { kind: 'worded', section: 'opening', text: 'Fully working.' })
    expect(own.unsupported).toBe(1)
  })

  test('a struck note is forgotten', () => {
    expect(text(sheet(locked, { kind: 'struck', note: 'n2' }), 'wrong')).toContain('Nobody noted a cause')
  })

  test('fixings left over, and none where all went back', () => {
    const opened: NoteContentInput = { kind: 'opened', cover: cover.id, minutes: 1, fixings: screws(4) }
    const closed = (count: number): NoteContentInput => ({
      kind: 'closed',
      cover: cover.id,
      minutes: 1,
      fixings: screws(count),
    })
    expect(text(sheet(opened, closed(3)), 'wrong')).toContain(
      'One 4 × 16 screw of the back cover was left over when it was put together.',
    )
    expect(text(sheet(opened, closed(3)), 'with-it')).not.toContain('No part is noted as missing')
    expect(text(sheet(opened, closed(4)), 'wrong')).not.toContain('left over')
    expect(text(sheet(opened), 'wrong')).toContain('Off it and not put back: back cover.')
  })

  test('parts out, parts not there, and what is damp', () => {
    const view = sheet(
      { kind: 'taken-out', part: 'hose' },
      { kind: 'cleaned', task: 'wash-filter', dryHours: 24 },
      { kind: 'tried', function: 'tools', result: 'not-there' },
    )
    expect(text(view, 'wrong')).toContain('Taken out of it and not put back: hose.')
    expect(text(view, 'wrong')).toContain('Washed and not found dry yet: pre-motor filter.')
    expect(text(view, 'wrong')).toContain('Not there: tools.')
    const dry = sheet({ kind: 'cleaned', task: 'wash-filter', dryHours: 24 }, { kind: 'dried', note: 'n2' })
    expect(text(dry, 'wrong')).not.toContain('dry')
  })

  test('every function of the library has words of its own, and each of their outcomes is one that it has', () => {
    const all = blueprints.flatMap((blueprint) => functionsOf(blueprint).functions)
    const without = all.filter(({ id }) => functionFailures[id] === undefined && !id.startsWith('control.'))
    expect([...new Set(without.map(({ id }) => id))]).toEqual([])
    for (const [id, { shown = {} }] of Object.entries(functionFailures)) {
      const outcomes = new Set(
        all.filter((one) => one.id === id).flatMap(({ check }) => check.outcomes.map((o) => o.id)),
      )
      expect(
        Object.keys(shown).filter((outcome) => !outcomes.has(outcome)),
        id,
      ).toEqual([])
    }
  })
})

describe('the sheet says nothing against itself', () => {
  test('a graded part is not “nobody noted how its parts look”', () => {
    const worn = text(sheet({ kind: 'graded', part: 'casing', when: 'after', grade: 'A' }), 'worn')
    expect(worn).not.toContain('Nobody noted')
    expect(worn).toContain('casing (A)')
    expect(text(sheet(), 'worn')).toContain('Nobody noted')
  })

  test('with no repair there is no last repair', () => {
    for (const view of [sheet(), sheet(ranWell)]) expect(text(view, 'tested')).not.toContain('last repair')
    expect(text(sheet(rollCleaned), 'tested')).toContain('Not run since the last repair.')
  })

  test('cleaned in the title takes more than a filter', () => {
    const washed: NoteContentInput = { kind: 'cleaned', task: 'wash-filter', dryHours: 24 }
    expect(text(sheet(washed), 'title')).not.toContain('cleaned')
    const full: NoteContentInput = { kind: 'cleaned', task: 'other', text: 'Full clean, inside and out' }
    expect(text(sheet(full), 'title')).toContain('cleaned')
    expect(text(sheet(full, washed), 'title')).not.toContain('cleaned')
  })

  test('nobody is said to have read a plate', () => {
    expect(text(sheet(), 'opening')).toContain('Usual for its kind, and so entered: ')
    const other = sheetOf(documentOf([cameIn({ plate: { ...upright.plate, powerW: upright.plate.powerW + 200 } })]))
    expect(text(other, 'opening')).toContain(`As entered when it came in: `)
    for (const view of [sheet(), other]) {
      const why = view.sections.flatMap(({ claims }) => claims.map((claim) => claim.why)).join(' ')
      expect(why).toContain('As entered when it came in')
      expect(why).not.toMatch(/stands on the plate|by its plate/i)
    }
  })

  test('a repair that is called new and was none is told by what was done', () => {
    const repair = upright.repairs.find(
      ({ name, options }) => /^New /.test(name) && options.some(({ id }) => id === 'clean'),
    )!
    const washed = sheet({ kind: 'repaired', repair: repair.id, option: 'clean', minutes: 5, costMinor: 0 })
    expect(text(washed, 'done')).not.toMatch(/\bnew\b/i)
  })
})

describe('what the buyer gets to see of the bench', () => {
  const named = (name: string, model?: string): SaleSheetView =>
    sheetOf(documentOf([cameIn({ name, ...(model === undefined ? {} : { model }) })]))

  test.each([
    ['Cream upright, Barnaby’s garage', undefined, 'Cream bagged upright: not shown to work'],
    ['Barnaby’s, the red one', undefined, 'Bagged upright: not shown to work'],
    ['Cream upright, Barnaby’s garage', 'UP-700', 'UP-700, bagged upright: not shown to work'],
  ])('“%s” of the model %s is offered as “%s”', (name, model, title) => {
    expect(text(named(name, model), 'title')).toBe(title)
  })

  test('nothing private: neither its name on the bench nor its id', () => {
    const view = named('Cream upright, Barnaby’s garage')
    const paper = JSON.stringify(sheetPaper(view))
    expect(paper).not.toContain('Barnaby')
    expect(paper).not.toContain(`"${view.machine.id},`)
    expect(view.reference).toMatch(/^Sheet [A-Z0-9]{1,4}-\d+$/)
  })

  test('a price says for what', () => {
    const spares = sheet()
    expect(sheetPaper(spares).price).toBe(`${spares.price!.text} for spares or repair as it stands`)
    const listed = sheet(ranWell, { kind: 'listed', priceMinor: 4500, where: '', grade: 'B' })
    expect(sheetPaper(listed).price).toBe('£45.00')
  })
})
