import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { filmTime } from '../../../src/base/film-time.ts'
import type { Note, NoteContentInput } from '../../../src/bench/note.ts'
import { chaptersText, filmsOf, leastApartMs } from '../../../src/bench/story/chapters.ts'
import { plainTexts } from '../../../src/bench/story/plain-text.ts'
import { log } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const start = Date.UTC(2026, 2, 14, 10, 0, 0)

/** A log whose notes were made so many seconds after ten o'clock. */
const timed = (entries: readonly (readonly [seconds: number, content: NoteContentInput])[]): readonly Note[] =>
  log(entries.map(([, content]) => content)).map((note, at) => ({
    ...note,
    at: new Date(start + (entries[at]?.[0] ?? 0) * 1000).toISOString(),
  }))

const on = (film = ''): NoteContentInput => ({ kind: 'camera', state: 'rolling', film })
const off: NoteContentInput = { kind: 'camera', state: 'stopped' }
const said = (text: string): NoteContentInput => ({ kind: 'said', text })
const words = ({ content }: Note): string => (content.kind === 'said' ? content.text : content.kind)

/** `0:00:00 Start` and so on, film by film. */
const marks = (entries: Parameters<typeof timed>[0]): readonly (readonly string[])[] =>
  filmsOf(timed(entries), words).films.map(({ chapters }) =>
    chapters.map(({ atMs, text }) => `${filmTime(atMs)} ${text}`),
  )

describe('chapters of a film', () => {
  it('count from the moment the camera is on', () => {
    expect(marks([[0, said('before')], [60, on()], [90, said('flex')], [3725, said('motor')], [3800, off], [3900, said('later')]])) // prettier-ignore
      .toEqual([['0:00:00 Start', '0:00:30 flex', '1:01:05 motor']])
  })

  it('leave out the time while the camera is off', () => {
    // 100 s of film, 1000 s off, then 20 s on: worked out by hand, 120 s of film.
    expect(marks([[0, on()], [50, said('one')], [100, off], [600, said('unseen')], [1100, on()], [1120, said('two')]])) // prettier-ignore
      .toEqual([['0:00:00 Start', '0:00:50 one', '0:02:00 two']])
  })

  it('of several films stand in lists of their own, and a film taken up again goes on', () => {
    const entries = [[0, on('strip')], [20, said('a')], [40, on('clean')], [55, said('b')], [70, off], [80, on('strip')], [95, said('c')]] as const // prettier-ignore
    expect(marks(entries)).toEqual([
      ['0:00:00 Start', '0:00:20 a', '0:00:55 c'],
      ['0:00:00 Start', '0:00:15 b'],
    ])
    expect(chaptersText(filmsOf(timed(entries), words))).toBe(
      'strip\n0:00:00 Start\n0:00:20 a\n0:00:55 c\n\nclean\n0:00:00 Start\n0:00:15 b',
    )
  })

  it('closer than ten seconds are one, the first of them giving the time', () => {
    expect(marks([[0, on()], [9, said('a')], [19, said('b')], [28, said('c')], [29, said('d')]])) // prettier-ignore
      .toEqual([['0:00:00 Start; a', '0:00:19 b; c', '0:00:29 d']])
    const long = 'x'.repeat(80)
    expect(
      marks([
        [0, on()],
        [1, said(long)],
        [2, said(long)],
        [3, said('z')],
      ]),
    ).toEqual([[`0:00:00 Start; ${long} and more`]])
  })

  it('go with the times of the notes where these were sent later, and leave out what was struck out', () => {
    expect(marks([[0, on()], [100, said('late')], [40, said('early')], [200, said('slip')], [210, { kind: 'struck', note: 'n4' }]])) // prettier-ignore
      .toEqual([['0:00:00 Start', '0:00:40 early', '0:01:40 late']])
    expect(
      marks([
        [0, on()],
        [50, said('a')],
        [60, { kind: 'struck', note: 'n1' }],
      ]),
    ).toEqual([])
  })

  it('say how long the film had run while the camera is on', () => {
    expect(filmsOf(timed([[0, on('x')], [30, off], [100, on('x')]]), words).rolling) // prettier-ignore
      .toEqual({ film: 'x', since: '2026-03-14T10:01:40.000Z', beforeMs: 30_000 })
  })

  it('name no money', () => {
    const notes = timed([
      [0, on()],
      [60, { kind: 'repaired', repair: 'refit-flex', option: 'refit', minutes: 12, costMinor: 150 }],
      [90, { kind: 'spent', costMinor: 200, text: 'parcel' }],
      [120, { kind: 'left', exit: 'sell-working', receivedMinor: 4000, feeMinor: 100, safety: 'tested' }],
    ])
    const text = chaptersText(filmsOf(notes, plainTexts(notes, tinyBlueprint)))
    expect(text).toMatch(/^0:00:00 Start\n0:01:00 Repaired: .+\n0:02:00 Sold working$/)
    expect(text).not.toMatch(/£|\d\.\d\d/)
  })

  it('are in order, begin at nothing and stand ten seconds apart, whatever is noted', () => {
    const content = fc.oneof(fc.constantFrom(on(), on('b'), off), fc.string({ minLength: 1 }).filter((t) => t.trim() !== '').map(said)) // prettier-ignore
    const entries = fc.array(fc.tuple(fc.integer({ min: 0, max: 20_000 }), content), { maxLength: 40 })
    fc.assert(
      fc.property(entries, (some) => {
        for (const { chapters, lengthMs } of filmsOf(timed(some), words).films) {
          expect(chapters[0]?.atMs).toBe(0)
          chapters.slice(1).forEach(({ atMs }, at) => {
            expect(atMs - (chapters[at]?.atMs ?? 0)).toBeGreaterThanOrEqual(leastApartMs)
          })
          expect(lengthMs).toBeGreaterThanOrEqual(0)
        }
      }),
    )
  })
})
