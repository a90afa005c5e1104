import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../../src/base/result.ts'
import { checkNote } from '../../../../src/bench/append.ts'
import { machineLines } from '../../../../src/bench/books/lines-of.ts'
import { cleanView } from '../../../../src/bench/cleaning/clean-view.ts'
import { costLeft, foldNotes } from '../../../../src/bench/fold.ts'
import { jobOf } from '../../../../src/bench/job.ts'
import { noteLines } from '../../../../src/bench/lines.ts'
import type { Note, NoteContentInput } from '../../../../src/bench/note.ts'
import { blueprints } from '../../../../src/blueprint/library.ts'
import { usualAsking } from '../../../../src/machine/cleaning/usual-asking.ts'
import { added, content, log } from '../../../support/notes.ts'

const upright = blueprints.find(({ id }) => id === 'bagged-upright-one-motor')!
const come = added({ blueprint: upright.id, plate: upright.plate })
const filterWashed: NoteContentInput = {
  kind: 'cleaned',
  task: 'wash-filter',
  part: 'pre-motor-filter',
  minutes: 5,
  costMinor: 0,
  dryHours: 24,
}
const casingWashed: NoteContentInput = { kind: 'cleaned', task: 'wash-casing', minutes: 15, costMinor: 30, dryHours: 2 }

const asking = usualAsking(jobOf(foldNotes(log([come])), log([come]), upright), 'GBP', '2026-03-14')
const viewOf = (notes: readonly Note[], now: string) => {
  const state = foldNotes(notes)
  return cleanView({ state, notes, job: jobOf(state, notes, upright), asking, now })
}
/** The same log with the note of this place written at another moment. */
const at = (notes: readonly Note[], place: number, moment: string): readonly Note[] =>
  notes.map((note, index) => (index === place ? { ...note, at: moment } : note))

const problemsOf = (notes: readonly Note[], input: NoteContentInput) => {
  const checked = checkNote(notes, content(input), upright)
  return checked.kind === 'refused' ? checked.problems : []
}

describe('a cleaning noted', () => {
  it('costs its minutes and materials, in the books as in the state', () => {
    const before = log([come])
    const after = log([come, casingWashed, { ...filterWashed, costMinor: 120 }])
    expect(foldNotes(after).minutes - foldNotes(before).minutes).toBe(20)
    expect(costLeft(foldNotes(after)) - costLeft(foldNotes(before))).toBe(150)
    const lines = valueOf(machineLines(after))
    const spent = lines.filter(({ account }) => account === 'machines').reduce((sum, { minor }) => sum + minor, 0)
    expect(spent).toBe(500 + 150)
  })

  it('reads by its name', () => {
    const [, line] = noteLines(log([come, casingWashed]), upright, [])
    expect(line.text).toBe('Cleaned: wash the casing, 15 min, £0.30; to dry for 2 h')
  })

  it('is refused by a name near the ones there are', () => {
    expect(problemsOf(log([come]), { kind: 'cleaned', task: 'wash-cassing' })).toMatchObject([
      { code: 'unknown-task', where: 'task', what: '“wash-cassing” is not a task here', mend: expect.stringContaining('wash-casing') as string },
    ]) // prettier-ignore
    expect(problemsOf(log([come]), { ...casingWashed, part: 'wing' })).toMatchObject([{ code: 'unknown-part' }])
    expect(problemsOf(log([come]), { kind: 'cleaned', task: 'other' })).toMatchObject([{ code: 'nothing-said' }])
    expect(problemsOf(log([come]), { kind: 'cleaned', task: 'other', text: 'Lamp glass' })).toEqual([])
  })

  it('drops out of what is to do, and comes back when it is struck out', () => {
    const ids = (notes: readonly Note[]) => viewOf(notes, '2026-03-14T12:00:00Z').plan.ranked.map(({ id }) => id)
    expect(ids(log([come]))).toContain('wash-casing')
    expect(ids(log([come, casingWashed]))).not.toContain('wash-casing')
    const struck = log([come, casingWashed, { kind: 'struck', note: 'n2', reason: 'a slip' }])
    expect(ids(struck)).toContain('wash-casing')
    expect(foldNotes(struck).drying).toEqual([])
    expect(viewOf(struck, '2026-03-14T12:00:00Z')).toMatchObject({ minutes: 0, costMinor: 0, done: [] })
  })
})

describe('a drying clock', () => {
  it('runs over midnight and says so until it is felt', () => {
    const notes = at(log([come, filterWashed]), 1, '2026-03-14T17:40:00.000Z')
    const line = { name: 'Pre-motor filter', readyAt: '2026-03-15T17:40:00.000Z', note: 'n2' }
    expect(viewOf(notes, '2026-03-15T17:39:59.999Z').drying).toMatchObject([{ ...line, state: 'drying' }])
    expect(viewOf(notes, '2026-03-15T17:40:00.000Z').drying).toMatchObject([{ ...line, state: 'due' }])
    expect(viewOf(notes, '2026-04-01T00:00:00.000Z').drying).toMatchObject([{ state: 'due' }])
  })

  // British Summer Time began on 29 March 2026 and ended on 25 October 2026, 01:00 UTC (Summer Time Order 2002).
  it.each([
    ['2026-03-28T17:40:00.000Z', '2026-03-29T17:40:00.000Z'],
    ['2026-10-24T17:40:00.000Z', '2026-10-25T17:40:00.000Z'],
    ['2026-12-31T23:30:00.000Z', '2027-01-01T23:30:00.000Z'],
    // A moment with an offset is the same moment.
    ['2026-10-25T01:30:00+01:00', '2026-10-26T00:30:00.000Z'],
  ])('begun at %s is done 24 hours later, at %s, whatever clocks are put to', (from, readyAt) => {
    expect(foldNotes(at(log([come, filterWashed]), 1, from)).drying).toMatchObject([{ readyAt }])
  })

  it('takes parts of an hour', () => {
    const notes = at(log([come, { ...casingWashed, dryHours: 0.5 }]), 1, '2026-03-14T23:45:00.000Z')
    expect(foldNotes(notes).drying).toMatchObject([{ readyAt: '2026-03-15T00:15:00.000Z' }])
  })

  it('stops when it is found dry, once, early or late', () => {
    const notes = log([come, filterWashed, casingWashed, { kind: 'dried', note: 'n2' }])
    const view = viewOf(notes, '2026-03-14T12:00:00.000Z')
    expect(view.drying.map(({ note }) => note)).toEqual(['n3'])
    expect(view.dry).toMatchObject([{ note: 'n2', name: 'Pre-motor filter' }])
    expect(problemsOf(notes, { kind: 'dried', note: 'n2' })).toMatchObject([{ code: 'dry-already' }])
    expect(problemsOf(notes, { kind: 'dried', note: 'n1' })).toMatchObject([{ code: 'nothing-drying' }])
    const again = log([come, filterWashed, { kind: 'dried', note: 'n2' }, { kind: 'struck', note: 'n3', reason: '' }])
    expect(foldNotes(again).drying).toHaveLength(1)
  })

  it('what is ready first stands first, and goes into the calendar', () => {
    const view = viewOf(log([come, filterWashed, casingWashed]), '2026-03-14T10:30:00.000Z')
    expect(view.drying.map(({ note }) => note)).toEqual(['n3', 'n2'])
    expect(view.calendar).toContain('DTSTART:20260315T100100Z')
    expect(viewOf(log([come]), '2026-03-14T10:30:00.000Z').calendar).toBeNull()
  })
})

describe('how it looks', () => {
  const graded = (part: string, when: 'before' | 'after', grade: 'A' | 'B' | 'C' | 'D'): NoteContentInput => ({
    kind: 'graded',
    part,
    when,
    grade,
  })

  it('is told by part, before and after, and the figures go by the worst part as it is now', () => {
    const one = viewOf(log([come, graded('casing', 'before', 'C'), graded('wheels', 'before', 'D')]), '2026-03-14T12:00:00Z') // prettier-ignore
    expect(one.plan.grade).toBe('D')
    const notes = [graded('casing', 'before', 'C'), graded('wheels', 'before', 'D'), graded('wheels', 'after', 'B')]
    const two = viewOf(log([come, ...notes]), '2026-03-14T12:00:00Z')
    expect(two.grades).toEqual([
      { part: 'wheels', name: 'Wheels and castors', before: 'D', after: 'B' },
      { part: 'casing', name: 'Casing', before: 'C', after: null },
    ])
    expect(two).toMatchObject({ looksBy: 'parts', plan: { grade: 'C' } })
    const three = viewOf(log([come, ...notes, graded('casing', 'after', 'B')]), '2026-03-14T12:00:00Z')
    expect(three.plan.grade).toBe('B')
    expect(three.plan.askMinor).toBeGreaterThan(two.plan.askMinor)
  })

  it('is that of the price to ask until a part is graded', () => {
    expect(viewOf(log([come]), '2026-03-14T12:00:00Z')).toMatchObject({ looksBy: 'condition', plan: { grade: 'B' } })
  })

  it('is no better for one part graded A', () => {
    const view = viewOf(log([come, graded('casing', 'after', 'A')]), '2026-03-14T12:00:00Z')
    expect(view).toMatchObject({ looksBy: 'condition', plan: { grade: 'B' } })
    expect(view.plan.askMinor).toBe(viewOf(log([come]), '2026-03-14T12:00:00Z').plan.askMinor)
  })
})
