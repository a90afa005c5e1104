import { mkdir, readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { valueOf } from '../../src/base/result.ts'
import { checkBackup } from '../../src/store/backup/check-backup.ts'
import { checkStore } from '../../src/store/backup/check-store.ts'
import { exportFolder } from '../../src/store/backup/export-folder.ts'
import { makeBackup } from '../../src/store/backup/make-backup.ts'
import { openToRead } from '../../src/store/backup/open-to-read.ts'
import { restoreBackup } from '../../src/store/backup/restore-backup.ts'
import { readEverything } from '../../src/store/copy/read-everything.ts'
import type { KeptRecord } from '../../src/store/copy/records.ts'
import { restoreIntoDatabase } from '../../src/store/move/restore-into-database.ts'
import { moveBench } from '../../src/store/move/move-bench.ts'
import { openBenchStore, type BenchStore, type StorePlace } from '../../src/store/open-bench-store.ts'
import { openStore } from '../../src/store/sqlite/open-store.ts'
import { everythingIn, lookOver, picture, tempFolder } from '../support/filled-store.ts'
import { added, log } from '../support/notes.ts'
import { ask, postgresHere, sharedPostgres } from '../support/postgres.ts'

const spent = (id: string) => ({
  id: 'a',
  log: id,
  seq: 1,
  at: '2026-03-15T10:00:00.000Z',
  content: { kind: 'spent', day: '2026-03-15', what: 'Solder', costMinor: 1, currency: 'GBP', minutes: 0 },
})

/** Writes a machine and an expense at a time, both or none, until it is told to end. */
const write = async (store: BenchStore, name: string, isOver: () => boolean): Promise<number> => {
  let written = 0
  for (; !isOver(); written++) {
    const id = `${name}${written}`
    const [first] = log([added()], id)
    const both = await store.logs.write('own', [
      { kind: 'machine', id, expectedVersion: 0, entries: [first] },
      { kind: 'expense', id, expectedVersion: 0, entries: [spent(id)] },
    ])
    expect(both).toEqual({ kind: 'appended' })
  }
  return written
}

const fill = async (store: BenchStore): Promise<string> => {
  const kept = await store.photos.put(await picture(1))
  if (kept.kind !== 'kept') throw new Error('the photograph was not kept')
  const about = { kind: 'machine' } as const
  const notes = [added(), { kind: 'said', text: 'Görel’s “best” 😀\nline two' }, { kind: 'photo', photo: kept.photo.id, about }] as const // prettier-ignore
  await store.notes.add('own', 'm1', log(notes))
  await store.settings.add({ at: '2026-03-14T12:00:00.000Z', change: { hourMinor: 900 } })
  await store.people.putPerson({ id: 'p1', name: 'Ada', role: 'keeper', passphrase: '$scrypt$kept', addedAt: '2026-03-14T12:00:00.000Z', goneAt: null }) // prettier-ignore
  return kept.photo.id
}

/** Passphrases are in no backup. */
const withoutPassphrases = (records: readonly KeptRecord[]): readonly KeptRecord[] =>
  records.map((one) => (one.kind === 'person' ? { ...one, person: { ...one.person, passphrase: null } } : one))

describe.runIf(postgresHere())('a bench in PostgreSQL', () => {
  let folder = ''
  let remove: () => Promise<void>
  let place: StorePlace
  let store: BenchStore
  beforeEach(async () => {
    ;({ folder, remove } = await tempFolder())
    place = { folder: join(folder, 'data'), database: await (await sharedPostgres()).newDatabase() }
    await mkdir(place.folder)
    store = valueOf(await openBenchStore(place))
  })
  afterEach(async () => {
    await store.close()
    await remove()
  })

  const reading = async <T>(from: StorePlace, work: (source: Source) => Promise<T>): Promise<T> => {
    const source = valueOf(await openToRead(from))
    try {
      return await work(source)
    } finally {
      await source.close()
    }
  }
  const everythingOf = async ({ db }: Source): Promise<readonly KeptRecord[]> => {
    const records: KeptRecord[] = []
    for await (const record of readEverything(db)) records.push(record)
    return records
  }
  const backUp = (from: StorePlace, file: string) =>
    reading(from, async (source) => valueOf(await makeBackup({ ...source, madeAt: '2026-03-18T06:00:00.000Z' }, file)))

  it('is backed up as of one moment while two write, and comes back whole in a folder', async () => {
    await fill(store)
    let isMade = false
    const writing = ['a', 'b'].map((name) => write(store, name, () => isMade))
    // Not before they are at it.
    while ((await store.logs.list('own', 'expense')).length < 5) await new Promise(setImmediate)
    const file = join(folder, 'out', 'bench.zip')
    const made = await backUp(place, file)
    isMade = true
    const written = (await Promise.all(writing)).reduce((sum, one) => sum + one)
    expect((await checkBackup(file)).problems).toEqual([])
    expect(made.counts.machines - 1).toBe(made.counts.logs)
    expect(made.counts.logs).toBeGreaterThanOrEqual(5)
    expect(written).toBeGreaterThan(made.counts.logs)
    const to = join(folder, 'again')
    expect(valueOf(await restoreBackup(file, to, (where) => openStore({ folder: where }))).counts).toEqual(made.counts)
    expect((await lookOver(to)).problems).toEqual([])
  })

  it('comes back with the same contents, and goes on into another database', async () => {
    await fill(store)
    let left = 20
    await write(store, 'w', () => left-- === 0)
    const file = join(folder, 'bench.zip')
    await backUp(place, file)
    const to = { folder: join(folder, 'again') }
    valueOf(await restoreBackup(file, to.folder, (where) => openStore({ folder: where })))
    const before = await reading(place, everythingOf)
    const restored = await everythingIn(to.folder)
    expect(JSON.stringify(before)).toContain('scrypt')
    expect(restored).toEqual(withoutPassphrases(before))
    const next = { folder: join(folder, 'next'), database: await (await sharedPostgres()).newDatabase() }
    expect(valueOf(await moveBench(to, next)).photos).toBe(2)
    expect(await reading(next, everythingOf)).toEqual(restored)
  })

  it('comes back straight into another database, which has to be empty', async () => {
    await fill(store)
    const file = join(folder, 'bench.zip')
    await backUp(place, file)
    const next = { folder: join(folder, 'next'), database: await (await sharedPostgres()).newDatabase() }
    const restored = valueOf(await restoreIntoDatabase(file, next))
    expect(restored).toMatchObject({ counts: { machines: 1, people: 1, photographs: 1 }, lost: [] })
    expect(await reading(next, everythingOf)).toEqual(withoutPassphrases(await reading(place, everythingOf)))
    expect((await reading(next, (source) => checkStore(source))).problems).toEqual([])
    // What it was unpacked into on the way is gone again.
    expect(await readdir(next.folder)).toEqual([])
    expect(await restoreIntoDatabase(file, next)).toMatchObject({ problems: [{ code: 'not-empty' }] })
  })

  it('is not half restored where the database gives up in the middle', async () => {
    await fill(store)
    let left = 3
    await write(store, 'w', () => left-- === 0)
    const file = join(folder, 'bench.zip')
    await backUp(place, file)
    const next = { folder: join(folder, 'next'), database: await (await sharedPostgres()).newDatabase() }
    await valueOf(await openBenchStore(next)).close()
    await ask(next.database, `create function no() returns trigger language plpgsql as $$ begin raise exception 'no room' using errcode = '53100'; end $$; create trigger no before insert on log for each row execute function no()`) // prettier-ignore
    expect(await restoreIntoDatabase(file, next)).toMatchObject({ kind: 'refused', problems: [{ code: 'disk-full' }] })
    for (const table of ['machine', 'note', 'log', 'person', 'settings_change', 'photo'])
      expect([table, await ask(next.database, `select 1 from ${table}`)]).toEqual([table, []])
    expect(await readdir(next.folder)).toEqual([])
    await ask(next.database, 'drop trigger no on log')
    expect(valueOf(await restoreIntoDatabase(file, next)).counts.logs).toBe(3)
  })

  it('is looked over and written as open files', async () => {
    const photo = await fill(store)
    const checked = await reading(place, (source) => checkStore(source))
    expect(checked).toMatchObject({ problems: [], counts: { machines: 1, photographs: 1 } })
    const to = join(folder, 'open')
    await reading(place, async (source) => valueOf(await exportFolder(source, [], to)))
    expect(await readFile(join(to, 'machines.jsonl'), 'utf8')).toContain('Görel’s')
    const image = await readFile(join(to, 'photographs', `${photo}-small.jpg`))
    expect(image.equals((await store.photos.get(photo, 'small')) ?? Buffer.alloc(0))).toBe(true)
    // Damaged past the program: a version that says more than there is.
    await store.db.updateTable('machine').set({ version: 9 }).where('id', '=', 'm1').execute()
    expect((await reading(place, (source) => checkStore(source))).problems.map(({ where }) => where)).toContainEqual(
      expect.stringContaining('m1'),
    )
  })
})

type Source = Extract<Awaited<ReturnType<typeof openToRead>>, { readonly kind: 'ok' }>['value']
