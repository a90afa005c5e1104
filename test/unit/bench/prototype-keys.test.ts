import { describe, expect, it } from 'vitest'
import { parse } from '../../../src/base/parse.ts'
import { keepBlueprint } from '../../../src/bench/blueprints.ts'
import { benchNotesSchema } from '../../../src/bench/note.ts'
import { memoryBlueprintStore } from '../../../src/store/memory/blueprint-store.ts'
import { added, log } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

/** The same text with the key `__proto__` put in at every brace in turn, as a reader of JSON takes it: a key of its own. */
const spoiled = (text: string): readonly unknown[] =>
  [...text.matchAll(/\{(?!\})/g)].map(
    ({ index }) =>
      JSON.parse(`${text.slice(0, index)}{"__proto__":{"polluted":true},${text.slice(index + 1)}`) as unknown,
  )

const isPolluted = (value: unknown): boolean =>
  typeof value === 'object' &&
  value !== null &&
  ((value as Record<string, unknown>)['polluted'] !== undefined || Object.values(value).some(isPolluted))

describe('a file with keys called __proto__', () => {
  it('of notes gives no object what it did not have', () => {
    const file = { format: 'thrum-notes-1', notes: log([added(), { kind: 'said', text: 'Heard it' }]) }
    expect(parse(benchNotesSchema, file, 'notes').kind).toBe('ok')
    const all = spoiled(JSON.stringify(file))
    expect(all.length).toBeGreaterThan(4)
    for (const one of all) expect(isPolluted(parse(benchNotesSchema, one, 'notes'))).toBe(false)
    expect(isPolluted({})).toBe(false)
  })

  it('of a blueprint neither', async () => {
    const whole = { ...tinyBlueprint, id: 'mine' }
    const all = spoiled(JSON.stringify(whole))
    expect(all.length).toBeGreaterThan(20)
    for (const one of all) {
      const own = memoryBlueprintStore()
      const outcome = await keepBlueprint({ library: [tinyBlueprint], own, now: () => '2026-03-14T10:00:00.000Z' }, one)
      expect(isPolluted(outcome)).toBe(false)
      expect(isPolluted(await own.list())).toBe(false)
    }
    expect(isPolluted({})).toBe(false)
  })
})
