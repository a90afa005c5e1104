import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'libsql'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { valueOf } from '../../src/base/result.ts'
import { openDatabase } from '../../src/store/sqlite/database.ts'
import { migrate } from '../../src/store/sqlite/migrations.ts'
import { sqlNoteStore } from '../../src/store/sql/note-store.ts'
import { openStore } from '../../src/store/sqlite/open-store.ts'
import { added, log } from '../support/notes.ts'

let folder = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'thrum-sqlite-'))
})
afterEach(() => rm(folder, { recursive: true }))

describe('opening the store', () => {
  it('makes folders that are not there', async () => {
    const store = valueOf(await openStore({ folder: join(folder, 'a', 'b') }))
    expect(await store.notes.list('own')).toEqual([])
    await store.close()
  })

  it('refuses a folder that cannot be made, and says so', async () => {
    await writeFile(join(folder, 'file'), '')
    for (const inside of [join(folder, 'file', 'data'), join(folder, 'file')]) {
      const problem = {
        code: 'folder-not-writable',
        where: inside,
        what: 'The data folder cannot be written: a file stands where a folder should be',
        mend: 'Name a folder that can be',
      }
      expect(await openStore({ folder: inside })).toEqual({ kind: 'refused', problems: [problem] })
    }
  })

  it('refuses a folder where the file cannot be opened', async () => {
    await mkdir(join(folder, 'bench.sqlite'))
    expect(await openStore({ folder })).toMatchObject({ kind: 'refused', problems: [{ code: 'folder-not-writable' }] })
  })

  it('refuses a file that is not a store', async () => {
    await writeFile(join(folder, 'bench.sqlite'), 'not a database '.repeat(500))
    expect(await openStore({ folder })).toMatchObject({ kind: 'refused', problems: [{ code: 'not-a-store' }] })
  })

  it('refuses a store that a newer version wrote, and leaves it as it was', async () => {
    await valueOf(await openStore({ folder })).close()
    const database = new Database(join(folder, 'bench.sqlite'))
    database.exec("insert into kysely_migration values ('9999-later', '2030-01-01')")
    expect(await openStore({ folder })).toMatchObject({ kind: 'refused', problems: [{ code: 'newer-store' }] })
    expect(database.prepare('select count(*) as count from kysely_migration').get()).toMatchObject({ count: 8 })
    database.close()
  })
})

const withoutMachinesBehind = [
  'drop index machine_behind;',
  "delete from kysely_migration where name = '0007-machines-behind';",
].join(' ')
const withoutPeople = [
  withoutMachinesBehind,
  'drop table device; drop table person;',
  "delete from kysely_migration where name = '0006-people-and-devices';",
].join(' ')
const withoutWriters = [
  withoutPeople,
  'alter table note drop column "by";',
  'alter table log_entry drop column "by";',
  "delete from kysely_migration where name = '0005-who-wrote-it';",
].join(' ')
const withoutBooks = [
  withoutWriters,
  'drop table log; drop table log_entry; drop table book_line; drop table book_month;',
  ...['list', 'result', 'came', 'left'].map((name) => `drop index machine_${name};`),
  ...[
    ...[
      'open',
      'label',
      'group_name',
      'currency',
      'count',
      'stock_minor',
      'summary',
      'complaint',
      'source',
      'came_day',
    ],
    ...['left_day', 'exit_name', 'paid_minor', 'received_minor', 'cost_minor', 'profit_minor', 'minutes'],
  ].map((name) => `alter table machine drop column "${name}";`),
  "delete from kysely_migration where name = '0004-shelf-and-books';",
].join(' ')
const withoutSettings = "drop table settings_change; delete from kysely_migration where name = '0003-settings';"
const withoutBlueprints = "drop table own_blueprint; delete from kysely_migration where name = '0002-own-blueprints';"

describe('a store that an older version wrote', () => {
  it.each([
    ['a quick start', withoutMachinesBehind],
    ['people and devices', withoutPeople],
    ['names of people', withoutWriters],
    ['the shelf and the books', withoutBooks],
    ['settings', `${withoutBooks} ${withoutSettings}`],
    ['own blueprints', `${withoutBooks} ${withoutSettings} ${withoutBlueprints}`],
  ])('from before there were %s keeps its notes and takes them from then on', async (_what, back) => {
    const before = valueOf(await openStore({ folder }))
    await before.notes.add('own', 'm1', log([added()]))
    await before.close()
    const database = new Database(join(folder, 'bench.sqlite'))
    database.exec(back)
    database.close()
    const store = valueOf(await openStore({ folder }))
    expect(await store.notes.notes('m1')).toEqual(log([added()]))
    expect(await store.blueprints.list()).toEqual([])
    expect((await store.books.machines('own', { open: true, limit: 9 })).items).toMatchObject([{ id: 'm1' }])
    expect(await store.books.months('own', 'calendar')).toMatchObject([{ account: 'cash' }, { account: 'machines' }])
    expect(await store.settings.add({ at: '2026-03-14T12:00:00.000Z', change: { hourMinor: 900 } })).toEqual({
      kind: 'kept',
    })
    await store.close()
  })
})

describe('two programs on one store', () => {
  it('may both be the first to open it', async () => {
    const starts = await Promise.all(Array.from({ length: 4 }, () => openStore({ folder })))
    const stores = starts.map(valueOf)
    expect(await stores[0].notes.add('own', 'm1', log([added()]))).toEqual({ kind: 'appended' })
    for (const store of stores) {
      expect(await store.notes.notes('m1')).toHaveLength(1)
      await store.close()
    }
  })

  it('let exactly one of two appends to the same version win', async () => {
    const one = valueOf(await openStore({ folder }))
    const other = valueOf(await openStore({ folder }))
    await one.notes.add('own', 'm1', log([added()]))
    const note = (id: string) => ({ ...log([added(), { kind: 'said', text: id }])[1], id })
    const outcomes = await Promise.all([
      one.notes.append('m1', 1, [note('one')]),
      other.notes.append('m1', 1, [note('other')]),
    ])
    expect(outcomes.map((outcome) => outcome.kind).sort()).toEqual(['appended', 'conflict'])
    expect(await one.notes.notes('m1')).toEqual(await other.notes.notes('m1'))
    await one.close()
    await other.close()
  })
})

describe('a full disk', () => {
  it('keeps nothing, says so, and takes the note once there is room', async () => {
    const db = valueOf(await openDatabase(folder, 'bench.sqlite'))
    valueOf(await migrate(db, folder))
    const store = sqlNoteStore(db)
    await store.add('own', 'm1', log([added()]))
    const size = (pages: string) =>
      db.executeQuery({ sql: `PRAGMA max_page_count = ${pages}`, parameters: [] } as never)
    await size('1')
    const long = log([
      added(),
      ...Array.from({ length: 40 }, () => ({ kind: 'said' as const, text: 'x'.repeat(2000) })),
    ])
    expect(await store.append('m1', 1, long.slice(1))).toMatchObject({
      kind: 'not-kept',
      problem: { code: 'disk-full' },
    })
    expect(await store.notes('m1')).toHaveLength(1)
    await size('100000')
    expect(await store.append('m1', 1, long.slice(1))).toEqual({ kind: 'appended' })
    await db.destroy()
  })
})
