import { expect } from 'vitest'
import { valueOf } from '../../src/base/result.ts'
import { openStore } from '../../src/store/sqlite/open-store.ts'
import { lookOver } from '../support/filled-store.ts'
import { atCopyOf } from './copy-of-store.ts'
import type { Looks } from './what-was-said.ts'
import { noteAt } from './what-is-written.ts'

type Row = Readonly<Record<string, unknown>>

/** What stands in the file, by SQLite's own words: its tables, which steps it says were made, and how many notes there are. */
const shapeOf = (folder: string): Row =>
  atCopyOf(folder, (all) => ({
    tables: all("select name, sql from sqlite_master where name not like 'sqlite_%' order by name"),
    steps: all('select name from kysely_migration order by name'),
    locked: all('select is_locked from kysely_migration_lock'),
    notes: all('select count(*) as count, sum(length(content)) as length from note'),
  }))

/** Looks at stores on their way from the one in the folder `old` to the one in `today`: never anything in between. */
export const looksAtMigrations = async (old: string, today: string): Promise<Looks> => {
  const [before, after] = [shapeOf(old), shapeOf(today)]
  expect(before['notes']).toEqual(after['notes'])
  expect(before['tables']).not.toEqual(after['tables'])
  await hasAll(today)
  return {
    afterOne: (folder, all) => {
      expect([before, after], `seed ${all.at(-1)?.seed}`).toContainEqual(shapeOf(folder))
      return Promise.resolve()
    },
    whole: hasAll,
  }
}

/** Opened, which goes on where the migration was ended. */
const hasAll = async (folder: string): Promise<void> => {
  const store = valueOf(await openStore({ folder }))
  const logs = await store.notes.list('own')
  await store.close()
  expect(logs.map((notes) => notes.length)).toEqual(Array.from({ length: 30 }, () => 6))
  for (const notes of logs) expect(notes).toEqual(notes.map(({ machine, seq }) => noteAt(machine, seq)))
  expect((await lookOver(folder)).problems).toEqual([])
}
