import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { addNote, type CommandDeps } from '../../src/bench/commands.ts'
import { canonical } from '../../src/bench/canonical.ts'
import { foldNotes } from '../../src/bench/fold.ts'
import type { NoteContentInput } from '../../src/bench/note.ts'
import { memorySettingsStore } from '../../src/store/memory/settings-store.ts'
import { added, content, log } from '../support/notes.ts'
import { storesOf } from '../support/stores.ts'
import { tinyBlueprint } from '../support/tiny-blueprint.ts'

type Made = { readonly id: string; readonly content: NoteContentInput }

/** Notes that say nothing of each other, as several devices make them where the bench does not answer. */
const independent = fc
  .array(
    fc.oneof(
      fc.record({
        kind: fc.constant('spent' as const),
        costMinor: fc.nat(5000),
        minutes: fc.nat(90),
        text: fc.constant('tape'),
      }),
      fc.record({ kind: fc.constant('said' as const), text: fc.string({ minLength: 1 }).map((text) => `on ${text}`) }),
    ),
    { minLength: 2, maxLength: 8 },
  )
  .map((contents) => contents.map((each, index): Made => ({ id: `a${index}`, content: each })))

/** The same notes in the order in which they come in: shuffled, each once or more, some struck out after they came. */
const arrivals = independent.chain((made) =>
  fc.record({
    made: fc.constant(made),
    order: fc.shuffledSubarray(made, { minLength: made.length }),
    other: fc.shuffledSubarray(made, { minLength: made.length }),
    again: fc.array(fc.constantFrom(...made), { maxLength: 4 }),
    struck: fc.subarray(made),
  }),
)

const strikes = (struck: readonly Made[]): readonly Made[] =>
  struck.map(({ id }) => ({ id: `s-${id}`, content: { kind: 'struck', note: id, reason: '' } }))

/** Sends notes to a bench one after another, at the version it then has; gives the log. */
const arrive = async (notes: readonly Made[]) => {
  const stores = storesOf()
  await stores.store.add('own', 'm1', log([added()]))
  const deps: CommandDeps = {
    ...stores,
    settings: memorySettingsStore(),
    bench: 'own',
    blueprintById: (id) => (id === tinyBlueprint.id ? tinyBlueprint : undefined),
    blueprintIds: () => [tinyBlueprint.id],
    now: () => '2026-03-15T10:00:00.000Z',
    newId: () => 'never asked',
  }
  for (const note of notes) {
    const version = (await stores.store.notes('m1')).length
    const outcome = await addNote(deps, 'm1', version, content(note.content), note.id)
    expect(outcome.kind).toBe('done')
  }
  return stores.store.notes('m1')
}

/** What a machine is, with the lists in it that are in the order of the log put into one order. */
const stateOf = (notes: Parameters<typeof foldNotes>[0]): string =>
  canonical(sorted(JSON.parse(JSON.stringify(foldNotes(notes))) as unknown))
const sorted = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(sorted).toSorted((a, b) => (canonical(a) < canonical(b) ? -1 : 1))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, sorted(inner)]))
}

describe('notes that come in late', () => {
  it('make the same machine in whatever order they come, and however often', async () => {
    await fc.assert(
      fc.asyncProperty(arrivals, async ({ order, other, again, struck }) => {
        const one = await arrive([...order, ...strikes(struck)])
        const two = await arrive([...other, ...again, ...strikes(struck), ...again, ...strikes(struck)])
        expect(stateOf(two)).toBe(stateOf(one))
        expect(two.length).toBe(one.length)
      }),
      { numRuns: 60 },
    )
  })

  it('stay in the history when they are struck out, and count for nothing', async () => {
    await fc.assert(
      fc.asyncProperty(arrivals, async ({ made, order, struck }) => {
        const notes = await arrive([...order, ...strikes(struck)])
        expect(notes.map(({ id }) => id)).toEqual([
          'n1',
          ...order.map(({ id }) => id),
          ...strikes(struck).map(({ id }) => id),
        ])
        expect(notes.map(({ seq }) => seq)).toEqual(notes.map((_, index) => index + 1))
        const left = made.filter((note) => !struck.includes(note))
        const spent = left.flatMap(({ content: each }) => (each.kind === 'spent' ? [each.costMinor] : []))
        expect(foldNotes(notes).spentMinor).toBe(spent.reduce((sum, minor) => sum + minor, 0))
      }),
      { numRuns: 60 },
    )
  })
})
