import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { closingProblems, openingProblems } from '../../src/bench/cover-rules.ts'
import { foldNotes, standing } from '../../src/bench/fold.ts'
import type { Note, NoteContentInput } from '../../src/bench/note.ts'
import { stripView } from '../../src/bench/stripping/strip-view.ts'
import type { Fixing } from '../../src/bench/stripping/strip-note.ts'
import { blueprintById } from '../../src/blueprint/library.ts'
import { added, log } from '../support/notes.ts'

const blueprint = blueprintById('bagged-upright-two-motors')!
const covers = ['bag-door', 'filter-cover', 'back-cover', 'board-cover', 'motor-cover']
const parts = ['board', 'suction-motor', 'hose']

const fixing = fc.record({
  count: fc.integer({ min: 1, max: 6 }),
  kind: fc.constantFrom('screw', 'felt washer', 'catch'),
  place: fc.constantFrom('', 'pot 1', 'lid'),
})
const fixings = fc.option(fc.array(fixing, { maxLength: 3 }), { nil: undefined })

/** Anything that somebody may try to note, sensible or not. */
const attempt = fc.oneof(
  { weight: 6, arbitrary: fc.record({ kind: fc.constant('cover' as const), at: fc.nat(4), fixings }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('part' as const), at: fc.nat(2), fixings }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('strike' as const), at: fc.nat(30) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('shelf' as const), at: fc.nat(2) }) },
)
type Attempt = typeof attempt extends fc.Arbitrary<infer T> ? T : never

/** A cover that is on comes off and one that is off goes back, where the rules let it; so with parts. */
const noteOf = (notes: readonly Note[], tried: Attempt): NoteContentInput | null => {
  const { off, out, missing } = foldNotes(notes)
  const counted = 'fixings' in tried && tried.fixings !== undefined ? { fixings: tried.fixings } : {}
  if (tried.kind === 'cover') {
    const cover = covers[tried.at]
    const isOff = off.includes(cover)
    const against = (isOff ? closingProblems : openingProblems)(cover, blueprint, off)
    return against.length > 0 ? null : { kind: isOff ? 'closed' : 'opened', cover, minutes: 1, ...counted }
  }
  if (tried.kind === 'strike') {
    const note = notes[tried.at % notes.length]
    return note.content.kind === 'added' || note.content.kind === 'struck' ? null : { kind: 'struck', note: note.id }
  }
  const part = parts[tried.at]
  if (missing.includes(part)) return null
  if (tried.kind === 'shelf') return { kind: 'took-off', part, shelfPart: 's', costMinor: 0 }
  return { kind: out.includes(part) ? 'put-in' : 'taken-out', part, ...counted }
}

const history = fc.array(attempt, { minLength: 6, maxLength: 24 }).map((tried) => {
  const notes: Note[] = [...log([added({ blueprint: blueprint.id })])]
  for (const one of tried) {
    const next = noteOf(notes, one)
    const seq = notes.length + 1
    if (next !== null) notes.push({ ...log([next])[0], id: `n${seq}`, seq })
  }
  return notes
})

const sum = (all: readonly { readonly count: number }[]): number => all.reduce((total, { count }) => total + count, 0)

describe('any history of a strip-down, strikes and all', () => {
  it('keeps count of every fixing: what was taken went back, is kept, is left over, or nobody counted', () => {
    let ticked = 0
    fc.assert(
      fc.property(history, (notes) => {
        const { balance, kept, leftOver, notClosed } = stripView(notes, blueprint)
        // Added up from the notes themselves, past the ledger.
        const stand = standing(notes).map(({ content }) => content)
        const loose = (fixings: readonly Fixing[] = []) => fixings.filter(({ kind }) => kind !== 'catch')
        const taken = stand.flatMap((c) => (c.kind === 'opened' || c.kind === 'taken-out' ? loose(c.fixings) : []))
        const back = stand.flatMap((c) => (c.kind === 'closed' || c.kind === 'put-in' ? loose(c.fixings) : []))
        expect(balance.taken).toBe(sum(taken))
        expect(balance.back).toBeLessThanOrEqual(sum(back))
        expect(balance.back + balance.kept + balance.leftOver + balance.unknown).toBe(balance.taken)
        expect(sum(kept.flatMap(({ lots }) => lots))).toBe(balance.kept)
        expect(sum(leftOver.flatMap((one) => one.fixings))).toBe(balance.leftOver)
        expect(kept.flatMap(({ lots }) => lots).every(({ kind }) => kind !== 'catch')).toBe(true)
        expect(notClosed.every((one) => one.fixings.every(({ kind }) => kind === 'catch'))).toBe(true)
        ticked += balance.back
      }),
      { seed: 20_261_126, numRuns: 150 },
    )
    expect(ticked).toBeGreaterThan(100)
  })

  it('never lets what is left over go but by a count, a word or a strike', () => {
    let stayed = 0
    fc.assert(
      fc.property(history, (notes) => {
        const before = stripView(notes, blueprint).balance.leftOver
        const off = foldNotes(notes).off
        for (const cover of covers) {
          const isOff = off.includes(cover)
          const against = (isOff ? closingProblems : openingProblems)(cover, blueprint, off)
          if (against.length > 0) continue
          const next = log([{ kind: isOff ? 'closed' : 'opened', cover, minutes: 1 }])[0]
          const seq = notes.length + 1
          expect(stripView([...notes, { ...next, id: `n${seq}`, seq }], blueprint).balance.leftOver).toBe(before)
          stayed += before
        }
      }),
      { seed: 20_261_129, numRuns: 100 },
    )
    expect(stayed).toBeGreaterThan(50)
  })

  it('has each piece either on or away, a part after its cover, and goes back in an order that can be', () => {
    fc.assert(
      fc.property(history, (notes) => {
        const state = foldNotes(notes)
        const { next, away } = stripView(notes, blueprint)
        const away_ = away.map(({ piece }) => piece)
        expect(away_.filter(({ kind }) => kind === 'cover').map(({ id }) => id).toSorted()).toEqual([...state.off].toSorted()) // prettier-ignore
        expect(away_.filter(({ kind }) => kind === 'part').map(({ id }) => id).toSorted()).toEqual([...state.out].toSorted()) // prettier-ignore
        const order = next.map(({ piece }) => `${piece.kind} ${piece.id}`)
        for (const part of blueprint.parts) {
          const [cover, own] = [order.indexOf(`cover ${part.behind}`), order.indexOf(`part ${part.id}`)]
          if (cover >= 0 && own >= 0) expect(own).toBeGreaterThan(cover)
        }
        let off = state.off
        for (const { piece, before } of away) {
          if (piece.kind === 'part') continue
          expect(closingProblems(piece.id, blueprint, off)).toEqual([])
          off = off.filter((id) => id !== piece.id)
          expect(before.every((other) => away_.indexOf(other) < away_.indexOf(piece))).toBe(true)
        }
      }),
      { seed: 20_261_127, numRuns: 100 },
    )
  })

  it('is as if a struck note had never been written', () => {
    fc.assert(
      fc.property(history, (notes) => {
        const without = standing(notes)
        const [a, b] = [stripView(notes, blueprint), stripView(without, blueprint)]
        expect(b).toEqual(a)
      }),
      { seed: 20_261_128, numRuns: 60 },
    )
  })
})
