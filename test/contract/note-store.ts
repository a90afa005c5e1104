import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Note, NoteContent } from '../../src/bench/note.ts'
import type { NoteStore } from '../../src/bench/ports.ts'
import { added, log } from '../support/notes.ts'

/** A store under test. `again` gives the store as another start of the program would find it. */
export type StoreUnderTest = {
  readonly store: NoteStore
  readonly again: () => Promise<NoteStore>
  readonly close: () => Promise<void>
}

const words = (text: string): NoteContent => ({ kind: 'said', text })
const noteAt = (seq: number, id: string, text = id): Note => ({
  id,
  machine: 'm1',
  seq,
  at: '2026-03-14T12:00:00.000Z',
  content: words(text),
})

/** What every store of notes must do. `outlives`: whether it keeps notes beyond one start of the program. */
export const noteStoreContract = (name: string, outlives: boolean, make: () => Promise<StoreUnderTest>): void => {
  describe(`store of notes: ${name}`, () => {
    let under: StoreUnderTest
    let store: NoteStore
    const first = log([added()])
    beforeEach(async () => {
      under = await make()
      store = under.store
    })
    afterEach(() => under.close())

    it('gives back what was added, in order', async () => {
      expect(await store.add('own', 'm1', first)).toEqual({ kind: 'appended' })
      expect(await store.append('m1', 1, [noteAt(2, 'b'), noteAt(3, 'a')])).toEqual({ kind: 'appended' })
      expect(await store.append('m1', 3, [noteAt(4, 'c')])).toEqual({ kind: 'appended' })
      expect(await store.notes('m1')).toEqual([...first, noteAt(2, 'b'), noteAt(3, 'a'), noteAt(4, 'c')])
    })

    it('has nothing of a machine that is not there', async () => {
      expect(await store.notes('m1')).toEqual([])
      expect(await store.list('own')).toEqual([])
      expect(await store.append('m1', 0, [noteAt(1, 'a')])).toEqual({ kind: 'missing' })
      expect(await store.notes('m1')).toEqual([])
    })

    it('lists the machines of one bench in the order they came in', async () => {
      for (const [bench, id] of [
        ['own', 'z'],
        ['demo', 'd'],
        ['own', 'a'],
      ] as const) {
        await store.add(bench, id, log([added()], id))
      }
      expect((await store.list('own')).map((notes) => notes[0]?.machine)).toEqual(['z', 'a'])
      expect((await store.list('demo')).map((notes) => notes[0]?.machine)).toEqual(['d'])
    })

    it('refuses an append to another version and keeps nothing of it', async () => {
      await store.add('own', 'm1', first)
      expect(await store.append('m1', 0, [noteAt(2, 'a')])).toEqual({ kind: 'conflict', version: 1 })
      expect(await store.append('m1', 2, [noteAt(3, 'a'), noteAt(4, 'b')])).toEqual({ kind: 'conflict', version: 1 })
      expect(await store.notes('m1')).toEqual(first)
    })

    it('takes a note sent again as kept, whatever the version', async () => {
      await store.add('own', 'm1', first)
      await store.append('m1', 1, [noteAt(2, 'a')])
      await store.append('m1', 2, [noteAt(3, 'b')])
      expect(await store.append('m1', 1, [noteAt(2, 'a')])).toEqual({ kind: 'appended' })
      expect(await store.notes('m1')).toEqual([...first, noteAt(2, 'a'), noteAt(3, 'b')])
    })

    it('takes a machine sent again as kept, and another one under its id as a conflict', async () => {
      await store.add('own', 'm1', first)
      expect(await store.add('own', 'm1', first)).toEqual({ kind: 'appended' })
      expect(await store.add('own', 'm1', [{ ...noteAt(1, 'other'), content: added() }])).toEqual({
        kind: 'conflict',
        version: 1,
      })
      expect(await store.notes('m1')).toEqual(first)
      expect(await store.list('own')).toHaveLength(1)
    })

    it('lets the same note id stand in two machines', async () => {
      await store.add('own', 'm1', first)
      await store.add('own', 'm2', log([added()], 'm2'))
      expect(await store.notes('m2')).toEqual(log([added()], 'm2'))
    })

    it('lets exactly one of many that append to the same version win', async () => {
      await store.add('own', 'm1', first)
      const hands = Array.from({ length: 8 }, (_, hand) => noteAt(2, `hand-${hand}`))
      const outcomes = await Promise.all(hands.map((note) => store.append('m1', 1, [note])))
      const winners = hands.filter((_, hand) => outcomes[hand]?.kind === 'appended')
      expect(winners).toHaveLength(1)
      expect(outcomes.filter((outcome) => outcome.kind === 'conflict')).toEqual(
        Array.from({ length: 7 }, () => ({ kind: 'conflict', version: 2 })),
      )
      expect(await store.notes('m1')).toEqual([...first, ...winners])
    })

    it('keeps any writing', async () => {
      const texts = [
        'naïve Ω ½ µF “quoted”',
        "'; drop table note; --",
        '吸尘器 🧹',
        'line one\nline two',
        '\u202eright to left',
      ]
      await store.add('own', 'm1', first)
      await store.append(
        'm1',
        1,
        texts.map((text, index) => noteAt(index + 2, `t${index}`, text)),
      )
      const read = (await store.notes('m1')).slice(1).map((note) => note.content)
      expect(read).toEqual(texts.map(words))
    })

    it('keeps a thousand notes in one go', async () => {
      const many = Array.from({ length: 1000 }, (_, index) => noteAt(index + 2, `n-${index}`))
      await store.add('own', 'm1', first)
      expect(await store.append('m1', 1, many)).toEqual({ kind: 'appended' })
      expect(await store.notes('m1')).toEqual([...first, ...many])
      expect(await store.append('m1', 1001, [noteAt(1002, 'last')])).toEqual({ kind: 'appended' })
    })

    if (!outlives) return
    it('gives the same to the next start of the program', async () => {
      await store.add('own', 'm1', first)
      await store.append('m1', 1, [noteAt(2, 'a')])
      const next = await under.again()
      expect(await next.notes('m1')).toEqual([...first, noteAt(2, 'a')])
      expect(await next.append('m1', 1, [noteAt(2, 'b')])).toEqual({ kind: 'conflict', version: 2 })
    })
  })
}
