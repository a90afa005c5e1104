import { describe, expect, it } from 'vitest'
import { problemText } from '../../../../src/base/problem.ts'
import { checkNote } from '../../../../src/bench/append.ts'
import { foldNotes } from '../../../../src/bench/fold.ts'
import { jobOf } from '../../../../src/bench/job.ts'
import { noteLines } from '../../../../src/bench/lines.ts'
import type { NoteContentInput } from '../../../../src/bench/note.ts'
import { blueprintById } from '../../../../src/blueprint/library.ts'
import { completenessOf } from '../../../../src/machine/completeness.ts'
import { functionChecks } from '../../../../src/machine/functions/function-checks.ts'
import { notesWithWord } from '../../../../src/web/functions/with-word.ts'
import { added, content, log } from '../../../support/notes.ts'
import { gatesPassedOf } from '../../../support/pass-gates.ts'

const blueprint = blueprintById('bagged-upright-one-motor')!
const cameIn = added({ blueprint: blueprint.id, plate: blueprint.plate })
const firstRun: NoteContentInput = {
  kind: 'reading',
  check: 'run-first',
  result: { kind: 'grade', outcome: 'runs' },
  minutes: 1,
}
const ready = [cameIn, ...gatesPassedOf(blueprint), firstRun]

type Tried = Extract<NoteContentInput, { kind: 'tried' }>
const tried = (name: string, result: Tried['result'], more: Partial<Tried> = {}): NoteContentInput => ({
  kind: 'tried',
  function: name,
  result,
  ...more,
})

const refusals = (notes: readonly NoteContentInput[], note: NoteContentInput): readonly string[] => {
  const result = checkNote(log(notes), content(note), blueprint)
  return result.kind === 'ok' ? [] : result.problems.map(problemText)
}

describe('a function tried, as a note', () => {
  it('is taken once the machine may be run, covers on', () => {
    expect(refusals(ready, tried('switch', 'bad'))).toEqual([])
  })

  it('is refused with the reason while running is barred', () => {
    expect(refusals([cameIn], tried('switch', 'good')).join()).toMatch(
      /^function: “Mains switch” runs the machine, and it must not be run yet: .*First run/,
    )
  })

  it('is refused with a cover off, where it runs', () => {
    const open = { kind: 'opened', cover: 'bag-door', minutes: 1 } as const
    expect(refusals([...ready, open], tried('switch', 'good')).join()).toMatch(
      /^function: “Mains switch” runs the machine, and the bag door is off\. Close all covers first/,
    )
    expect(refusals([...ready, open], tried('tools', 'good'))).toEqual([])
  })

  it('that could not be told, or is not there, needs no running', () => {
    expect(refusals([cameIn], tried('switch', 'cannot-tell'))).toEqual([])
    expect(refusals([cameIn], tried('wheels', 'not-there', { part: 'wheels' }))).toEqual([])
  })

  it('under an unknown name is refused with those that are near', () => {
    expect(refusals(ready, tried('brush-stop', 'good'))).toEqual([
      'function: “brush-stop” is not a function here. Did you mean brush-stops or brush.',
    ])
  })

  it('that is a check of the blueprint is a reading', () => {
    expect(refusals(ready, tried('lamps', 'bad'))).toEqual([
      'function: “Lamps” is the check “Headlamp while it runs” of the blueprint, and what it shows is a reading. Enter a reading of `run-headlamp`: one of lit, power-dark, dead, or could not tell.',
    ])
  })

  it('that is not there says which part is missing, if it has one', () => {
    expect(refusals(ready, tried('wheels', 'not-there')).join()).toMatch(
      /which part is missing is not said.*Name the part wheels/,
    )
    expect(refusals(ready, tried('wheels', 'not-there', { part: 'hose' })).join()).toMatch(/It must be wheels/)
    expect(refusals(ready, tried('tools', 'not-there'))).toEqual([])
    expect(refusals(ready, tried('tools', 'good', { part: 'hose' })).join()).toMatch(/only where it is not there/)
  })
})

describe('a part that is not there', () => {
  const notes = log([...ready, tried('hose-whole', 'not-there', { part: 'hose' })])

  it('is missing from then on, and takes what it fetches off the machine', () => {
    const { missing } = foldNotes(notes)
    expect(missing).toEqual(['hose'])
    expect(completenessOf(blueprint, missing)).toBeLessThan(1)
    expect(jobOf(foldNotes(notes), notes, blueprint).missing).toEqual(['hose'])
  })

  it('is there again once the note is struck out', () => {
    const last = notes.at(-1)!
    const struck = [
      ...notes,
      { ...last, id: 's', seq: last.seq + 1, content: content({ kind: 'struck', note: last.id }) },
    ]
    expect(foldNotes(struck).missing).toEqual([])
    const { rows } = functionChecks(jobOf(foldNotes(struck), struck, blueprint))
    expect(rows.find(({ id }) => id === 'hose-whole')?.state.kind).toBe('to-do')
  })
})

describe('in the history', () => {
  it('it reads by its name', () => {
    const lines = noteLines(log([...ready, tried('switch', 'bad', { text: 'crackles' })]), blueprint)
    expect(lines.at(-1)?.text).toBe('Tried: mains switch, not as it should be: crackles')
  })

  it('its minutes count', () => {
    const notes = log([...ready, tried('switch', 'good', { minutes: 3 })])
    expect(foldNotes(notes).minutes - foldNotes(log(ready)).minutes).toBe(3)
  })
})

describe('a word on an answer', () => {
  it.each([
    ['', [tried('switch', 'bad')]],
    ['  ', [tried('switch', 'bad')]],
    [' sticks when cold ', [tried('switch', 'bad', { text: 'sticks when cold' })]],
  ])('“%s” goes with a trial', (word, notes) => expect(notesWithWord(tried('switch', 'bad'), word)).toEqual(notes))
  it('follows a reading, which has no words of its own, and both are taken', () => {
    const notes = notesWithWord(firstRun, 'a little loud')
    expect(notes).toEqual([firstRun, { kind: 'said', text: 'a little loud' }])
    for (const one of notes) expect(refusals([cameIn, ...gatesPassedOf(blueprint)], one)).toEqual([])
  })
})
