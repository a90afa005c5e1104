import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { noteLines } from '../../../src/bench/lines.ts'
import { signedStores } from '../../../src/bench/people/signed-stores.ts'
import { notesText } from '../../../src/cli/machine-text.ts'
import { namesIn } from '../../../src/cli/who-wrote.ts'
import { openStore } from '../../../src/store/sqlite/open-store.ts'
import { put } from '../../contract/log-store.ts'
import { added, log } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeEach(async () => {
  line = await makeCommandLine()
})
afterEach(() => line.remove())

/** What Ada and Ben wrote on the pages, and Ben has left since; the first of each was written before anybody had a name. */
const fill = async () => {
  const store = valueOf(await openStore({ folder: join(line.folder, 'data') }))
  const person = (id: string, name: string, goneAt: string | null) =>
    store.people.putPerson({ id, name, role: 'keeper', passphrase: null, addedAt: '2026-03-01T10:00:00.000Z', goneAt })
  await person('p-ada', 'Ada', null)
  await person('p-ben', 'Ben', '2026-03-20T10:00:00.000Z')
  const as = (by: string | null) => signedStores(store, () => by)
  const [first, second, third] = log([added(), { kind: 'said', text: 'It rattles' }, { kind: 'said', text: 'A screw' }])
  await as(null).notes.add('own', 'm1', [first])
  await as('p-ben').notes.append('m1', 1, [second])
  await as('p-ada').notes.append('m1', 2, [third])
  await as(null).logs.write('own', [{ kind: 'part', id: 'part1', expectedVersion: 0, entries: [put('part1')] }])
  const reserved = { ...put('part1'), id: 'kept', seq: 2, content: { kind: 'reserved', machine: 'm1' } }
  await as('p-ben').logs.write('own', [{ kind: 'part', id: 'part1', expectedVersion: 1, entries: [reserved] }])
  const kept = { names: await namesIn(store.people), notes: await store.notes.notes('m1') }
  await store.close()
  return kept
}

describe('who wrote it', () => {
  it('stands behind the notes that thrum show prints, also of those who left', async () => {
    const { names, notes } = await fill()
    const [head, ...lines] = notesText({ lines: noteLines(notes, tinyBlueprint) }, names)
    expect(head).toBe('Notes:')
    expect(lines.map((one) => / by (Ada|Ben) {2}\(n\d\)$/.exec(one)?.[1])).toEqual([undefined, 'Ben', 'Ada'])
    expect(lines[1]).toMatch(/It rattles by Ben/)
  })

  it('stands behind the entries in thrum shelf show', async () => {
    await fill()
    const { out, err } = await line.run('shelf', 'show', 'part1')
    expect(err).toBe('')
    expect(out.split('\n').slice(-2)).toEqual([
      '  1. 2026-03-01 put on the shelf, 3 at £3.00  (part1-put)',
      '  2. 2026-03-01 kept for m1 by Ben  (kept)',
    ])
  })
})
