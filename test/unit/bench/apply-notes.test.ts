import { describe, expect, it } from 'vitest'
import { applyNotes } from '../../../src/bench/apply-notes.ts'
import { documentOf } from '../../../src/bench/queries.ts'
import { addNote, type CommandDeps } from '../../../src/bench/commands.ts'
import { memorySettingsStore } from '../../../src/store/memory/settings-store.ts'
import { added, content, log } from '../../support/notes.ts'
import { storesOf } from '../../support/stores.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const find = (id: string) => (id === tinyBlueprint.id ? tinyBlueprint : undefined)
const start = () => documentOf(log([added()]), find)
const made = (id: string, minute: number, input: Parameters<typeof content>[0]) => ({
  id,
  madeAt: new Date(Date.UTC(2026, 2, 14, 11, minute)).toISOString(),
  content: input,
})
const opened = made('a', 1, { kind: 'opened', cover: 'back-cover', minutes: 3 })
const said = made('b', 2, { kind: 'said', text: 'a remark' })

describe('notes made away from the bench', () => {
  it('make the same machine as on the bench', async () => {
    const stores = storesOf()
    await stores.store.add('own', 'm1', log([added()]))
    let at = ''
    const deps: CommandDeps = {
      ...stores,
      settings: memorySettingsStore(),
      bench: 'own',
      blueprintById: find,
      blueprintIds: () => [tinyBlueprint.id],
      now: () => at,
      newId: () => 'never asked',
    }
    for (const [index, note] of [opened, said].entries()) {
      at = note.madeAt
      const outcome = await addNote(deps, 'm1', index + 1, content(note.content), note.id)
      expect(outcome.kind).toBe('done')
    }
    const here = await applyNotes(await start(), tinyBlueprint, [opened, said])
    expect(here.refused).toEqual([])
    expect(here.document).toEqual(await documentOf(await stores.store.notes('m1'), find))
  })

  it('change nothing when the machine has them already', async () => {
    const { document } = await applyNotes(await start(), tinyBlueprint, [opened])
    expect((await applyNotes(document, tinyBlueprint, [opened])).document).toEqual(document)
  })

  it('are refused by the rules of the bench, and the later ones still count', async () => {
    const again = made('c', 3, { kind: 'opened', cover: 'back-cover', minutes: 3 })
    const { document, refused } = await applyNotes(await start(), tinyBlueprint, [opened, again, said])
    expect(refused.map(({ id }) => id)).toEqual(['c'])
    expect(refused[0]?.problems[0]?.what).toMatch(/off already/)
    expect(document.notes.map(({ id }) => id)).toEqual(['n1', 'a', 'b'])
  })
})
