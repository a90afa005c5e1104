import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { checkNote } from '../../../src/bench/append.ts'
import { fittedTo } from '../../../src/bench/fitted.ts'
import { foldNotes } from '../../../src/bench/fold.ts'
import { jobOf } from '../../../src/bench/job.ts'
import { noteLines } from '../../../src/bench/lines.ts'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import { added, content, flexRefitted, log } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const valued = (over: Omit<Extract<NoteContentInput, { kind: 'valued' }>, 'kind'>): NoteContentInput => ({
  kind: 'valued',
  ...over,
})
const at = (minute: number): string => new Date(Date.UTC(2026, 2, 14, 10, minute)).toISOString()

describe('a note of what is reckoned with', () => {
  const notes = log([
    added({ hourMinor: 900 }),
    valued({ workingMinor: 4500, parts: [{ part: 'motor', priceMinor: 1200 }] }),
    valued({ hourMinor: 1100, workingMinor: 5200, parts: [{ part: 'switch', priceMinor: 300 }] }),
  ])

  it('holds from there on; what it leaves out stays as it was', () => {
    expect(foldNotes(notes.slice(0, 1))).toMatchObject({
      hourMinor: 900,
      hourSetAt: at(0),
      prices: { working: null, spares: null, parts: {} },
    })
    expect(foldNotes(notes)).toMatchObject({
      hourMinor: 1100,
      hourSetAt: at(2),
      prices: {
        working: { minor: 5200, at: at(2) },
        spares: null,
        parts: { motor: { minor: 1200, at: at(1) }, switch: { minor: 300, at: at(2) } },
      },
    })
  })

  it('is struck out like any other, and the figure before it holds again', () => {
    const struck = log([...notes.map((note) => note.content), { kind: 'struck', note: 'n3' }])
    const { hourMinor, hourSetAt, prices } = foldNotes(struck)
    expect({ hourMinor, hourSetAt, prices }).toEqual({
      hourMinor: 900,
      hourSetAt: at(0),
      prices: {
        working: { minor: 4500, at: at(1) },
        spares: null,
        parts: { motor: { minor: 1200, at: at(1) } },
      },
    })
  })

  it('costs neither money nor minutes', () => {
    expect(foldNotes(notes)).toMatchObject({ spentMinor: 0, minutes: 0 })
  })

  it('reads as what was set', () => {
    expect(noteLines(notes, tinyBlueprint).map(({ text }) => text)).toEqual([
      expect.stringContaining('Came in'),
      'Reckoned with: sold working £45.00; motor £12.00',
      'Reckoned with: an hour of yours £11.00; sold working £52.00; handle switch £3.00',
    ])
  })

  it('goes into the job, with what was put in and how risk is weighed', () => {
    const worked = log([...notes.map((note) => note.content), flexRefitted])
    const job = jobOf(foldNotes(worked), worked, tinyBlueprint, 'cautious')
    // By hand: paid 5.00, the refit cost 1.50.
    expect(job).toMatchObject({ hourMinor: 1100, hourSetAt: at(2), attitude: 'cautious', putInMinor: 650 })
    expect(job.prices?.working).toEqual({ minor: 5200, at: at(2) })
    expect(job.events).toHaveLength(1)
    expect(jobOf(foldNotes(worked), worked, tinyBlueprint).attitude).toBe('average')
  })

  it('of a part that another blueprint does not have is dropped there', () => {
    const without = { ...tinyBlueprint, parts: tinyBlueprint.parts.filter(({ id }) => id !== 'motor') }
    expect(fittedTo(foldNotes(notes), without).prices.parts).toEqual({ switch: { minor: 300, at: at(2) } })
  })
})

describe('what is refused', () => {
  const refusals = (next: NoteContentInput): readonly string[] => {
    const result = checkNote(log([added()]), content(next), tinyBlueprint)
    return result.kind === 'ok' ? [] : result.problems.map((each) => `[${each.code}] ${problemText(each)}`)
  }

  it('nothing given', () => {
    expect(refusals(valued({}))).toEqual([
      '[nothing-valued] Neither a price nor the worth of an hour is given. Give at least one of them.',
    ])
  })

  it('a part that is not there, and one named twice', () => {
    const motor = { part: 'motor', priceMinor: 5 }
    expect(refusals(valued({ parts: [{ part: 'hose', priceMinor: 5 }, motor, motor] }))).toEqual([
      '[unknown-part] parts[0].part: “hose” is not a part here. Use one of plug, flex, switch, motor.',
      '[named-twice] parts[2].part: “motor” is given two prices. Give it one.',
    ])
  })

  it('nothing, where one figure is given', () => expect(refusals(valued({ sparesMinor: 0 }))).toEqual([]))
})
