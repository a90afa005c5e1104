import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { foldNotes } from '../../../src/bench/fold.ts'
import { jobOf } from '../../../src/bench/job.ts'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import { added, flexRefitted, gatesPassed, log, runsWell } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const whole: readonly NoteContentInput[] = [
  added({ complaints: ['dead'], claim: 'Just stopped', missing: ['plug'] }),
  { kind: 'seen', complaints: ['smell'], text: 'Scorched tag' },
  { kind: 'reading', check: 'pins-on', result: { kind: 'open' }, minutes: 1 },
  { kind: 'opened', cover: 'back-cover', minutes: 3 },
  { kind: 'spent', costMinor: 250, minutes: 4, text: 'Switch cleaner' },
  { kind: 'confirmed', fault: 'flex-open' },
  flexRefitted,
  { kind: 'closed', cover: 'back-cover', minutes: 3.5 },
  ...gatesPassed,
  runsWell,
  { kind: 'left', exit: 'sell-working', receivedMinor: 3500, minutes: 10, safety: 'Checked by me, meter only' },
]

describe('what the notes add up to', () => {
  const state = foldNotes(log(whole))

  it('adds money and minutes', () => {
    // By hand: materials 2.50 + repair 1.50; minutes 1 + 3 + 4 + 12 + 3.5 + 1 + 2 + 2 + 10.
    expect(state.paidMinor).toBe(500)
    expect(state.spentMinor).toBe(400)
    expect(state.minutes).toBe(38.5)
  })

  it('takes as profit what was received less what was paid and spent, minutes apart', () => {
    expect(state.left?.profitMinor).toBe(3500 - 500 - 400)
    expect(state.left?.at).toBe(log(whole).at(-1)?.at)
  })

  it('keeps claimed, seen, confirmed and fixed apart', () => {
    expect(state.claimed).toEqual({ complaints: ['dead'], words: 'Just stopped' })
    expect(state.seen).toEqual([{ note: 'n2', complaints: ['smell'], text: 'Scorched tag' }])
    expect(state.confirmed).toEqual([{ note: 'n6', fault: 'flex-open' }])
    expect(state.fixed).toEqual([{ note: 'n7', repair: 'refit-flex', option: 'refit' }])
    expect(state.missing).toEqual(['plug'])
  })

  it('knows which covers are off', () => {
    expect(foldNotes(log(whole.slice(0, 5))).off).toEqual(['back-cover'])
    expect(state.off).toEqual([])
  })

  it('takes no effect from a struck note and keeps it in the count', () => {
    const struck = foldNotes(
      log([...whole.slice(0, 7), { kind: 'struck', note: 'n7' }, { kind: 'struck', note: 'n4' }]),
    )
    expect(struck.fixed).toEqual([])
    expect(struck.off).toEqual([])
    expect(struck.spentMinor).toBe(250)
    expect(struck.minutes).toBe(1 + 4)
    expect(struck.struck).toEqual(['n4', 'n7'])
    expect(struck.version).toBe(9)
  })

  it('comes back when the note of its leaving is struck out', () => {
    expect(foldNotes(log([...whole, { kind: 'struck', note: `n${whole.length}` }])).left).toBeNull()
  })

  it('throws on a log without a first note', () => {
    expect(() => foldNotes([])).toThrow('no first note')
  })

  it('is the same for any order of arrival and any repeats', () => {
    const notes = log([...whole.slice(0, -1), { kind: 'struck', note: 'n5' }])
    const arrival = fc
      .tuple(
        fc.shuffledSubarray([...notes], { minLength: notes.length, maxLength: notes.length }),
        fc.array(fc.constantFrom(...notes), { maxLength: 8 }),
      )
      .map(([all, again]) => [...all, ...again])
    fc.assert(
      fc.property(arrival, (arrived) => {
        expect(foldNotes(arrived)).toEqual(foldNotes(notes))
      }),
    )
  })

  it('never lets money or minutes of struck notes count, whichever are struck', () => {
    const strikeable = whole.slice(1, -1).map((_, index) => `n${index + 2}`)
    fc.assert(
      fc.property(fc.subarray(strikeable), (strikes) => {
        const struck = foldNotes(
          log([...whole.slice(0, -1), ...strikes.map((note) => ({ kind: 'struck' as const, note }))]),
        )
        const left = foldNotes(log(whole.slice(0, -1)).filter((note) => !strikes.includes(note.id)))
        expect({ ...struck, struck: [], version: 0 }).toEqual({ ...left, version: 0 })
      }),
    )
  })
})

describe('the job of a machine', () => {
  it('has the events in order without those struck out', () => {
    const notes = log([...whole.slice(0, 8), { kind: 'struck', note: 'n3' }, { kind: 'seen', text: 'Only words' }])
    const job = jobOf(foldNotes(notes), [...notes].reverse(), tinyBlueprint)
    expect(job.events).toEqual([
      { kind: 'seen', note: 'n2', complaints: ['smell'] },
      { kind: 'opened', note: 'n4', cover: 'back-cover' },
      { kind: 'confirmed', note: 'n6', fault: 'flex-open' },
      { kind: 'repaired', note: 'n7', repair: 'refit-flex', option: 'refit' },
      { kind: 'closed', note: 'n8', cover: 'back-cover' },
    ])
    expect(job.complaints).toEqual(['dead'])
    expect(job.missing).toEqual(['plug'])
    expect(job.hourMinor).toBe(800)
  })

  it('keeps the result and the instrument of a reading', () => {
    const notes = log([
      added(),
      { kind: 'reading', check: 'pins-on', result: { kind: 'ohms', resistanceOhm: 12 }, minutes: 1 },
    ])
    expect(jobOf(foldNotes(notes), notes, tinyBlueprint).events).toEqual([
      {
        kind: 'reading',
        note: 'n2',
        check: 'pins-on',
        result: { kind: 'ohms', resistanceOhm: 12 },
        instrument: 'budget-multimeter',
      },
    ])
  })
})
