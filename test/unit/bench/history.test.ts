import { describe, expect, it } from 'vitest'
import { checkNote } from '../../../src/bench/append.ts'
import { foldNotes } from '../../../src/bench/fold.ts'
import { jobOf } from '../../../src/bench/job.ts'
import { noteLines } from '../../../src/bench/lines.ts'
import { noteContentSchema, type NoteContentInput } from '../../../src/bench/note.ts'
import { added, content, log } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const mark: NoteContentInput = {
  kind: 'stamp',
  part: 'motor',
  reading: { kind: 'one-ring', seen: { left: 0, right: 9, month: 4 } },
  text: 'Inside the fan housing',
}
const historyOf = (...inputs: readonly NoteContentInput[]) => {
  const notes = log(inputs)
  return jobOf(foldNotes(notes), notes, tinyBlueprint).history
}

describe('age and use', () => {
  it('come with the first note, are said again later, and what is left out stays', () => {
    expect(historyOf(added())).toEqual({ ageYears: undefined, wear: undefined })
    expect(historyOf(added({ ageYears: 12, wear: 'light' }))).toEqual({ ageYears: 12, wear: 'light' })
    expect(historyOf(added({ ageYears: 12 }), { kind: 'history', wear: 'heavy' })).toEqual({
      ageYears: 12,
      wear: 'heavy',
    })
  })

  it('struck out, are as they were before', () => {
    const inputs: readonly NoteContentInput[] = [
      added({ ageYears: 12 }),
      { kind: 'history', ageYears: 20 },
      { kind: 'struck', note: 'n2' },
    ]
    expect(historyOf(...inputs)).toEqual({ ageYears: 12, wear: undefined })
  })

  it('refuses a note that says neither', () => {
    const answer = checkNote(log([added()]), content({ kind: 'history' }), tinyBlueprint)
    expect(answer.kind === 'refused' ? answer.problems[0].code : '').toBe('nothing-known')
    expect(noteContentSchema.safeParse({ kind: 'history', ageYears: -1 }).success).toBe(false)
  })
})

describe('date marks', () => {
  it('are kept with their part, read in the log, and go when struck out', () => {
    const notes = log([added(), mark])
    expect(foldNotes(notes).marks).toEqual([
      { note: 'n2', part: 'motor', reading: content(mark).kind === 'stamp' ? mark.reading : null },
    ])
    expect(noteLines(notes, tinyBlueprint)[1]).toMatchObject({
      text: 'Date mark, motor: one ring, 0 and 9, arrow at 4. Inside the fan housing',
      canStrike: true,
    })
    expect(foldNotes(log([added(), mark, { kind: 'struck', note: 'n2' }])).marks).toEqual([])
  })

  it('on a part that is not there are refused, and so is a plate without a clue', () => {
    const answer = checkNote(log([added()]), content({ ...mark, part: 'moter' }), tinyBlueprint)
    expect(answer.kind === 'refused' ? answer.problems[0].code : '').toBe('unknown-part')
    expect(
      noteContentSchema.safeParse({ kind: 'stamp', part: 'motor', reading: { kind: 'plate', seen: {} } }).success,
    ).toBe(false)
  })
})

describe('lines of age and use', () => {
  it('say what is known', () => {
    const lines = noteLines(log([added(), { kind: 'history', ageYears: 12, wear: 'heavy' }]), tinyBlueprint)
    expect(lines[1]?.text).toBe('Known of it: about 12 years old; heavy use')
  })
})
