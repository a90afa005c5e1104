import { spawnSync } from 'node:child_process'
import { mkdir, readdir } from 'node:fs/promises'
import { join } from 'node:path'
import Database from 'libsql'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { makeBackup } from '../../../src/store/backup/make-backup.ts'
import { restoreBackup } from '../../../src/store/backup/restore-backup.ts'
import { photosInFolder } from '../../../src/store/copy/kept-photos.ts'
import { filePhotoStore } from '../../../src/store/files/photo-store.ts'
import { silent } from '../../../src/store/sql/announcer.ts'
import { storesOn } from '../../../src/store/sql/stores-on.ts'
import { openForReading } from '../../../src/store/sqlite/open-for-reading.ts'
import { openStore, type OpenStore } from '../../../src/store/sqlite/open-store.ts'
import { backUp, everythingIn, fillSmall, lookOver, picture, tempFolder } from '../../support/filled-store.ts'
import { added, log } from '../../support/notes.ts'

let folder = ''
let remove: () => Promise<void>
let mounted: string[] = []
beforeEach(async () => {
  ;({ folder, remove } = await tempFolder())
})
afterEach(async () => {
  for (const place of mounted) spawnSync('umount', ['-l', place])
  mounted = []
  await remove()
})

/** Mounts something for this test; false where the system does not let this user. */
const mount = (place: string, ...args: readonly string[]): boolean => {
  const done = spawnSync('mount', [...args, place]).status === 0
  if (done) mounted.push(place)
  return done
}

const said = (seq: number, text: string) =>
  log([added(), ...Array.from({ length: seq - 1 }, () => ({ kind: 'said' as const, text }))])[seq - 1]

/** Appends until the store says no; gives how many notes it said it had, and why it said no. */
const fillUp = async (store: OpenStore, version: number) => {
  for (let seq = version + 1; ; seq++) {
    const outcome = await store.notes.append('m1', seq - 1, [said(seq, 'x'.repeat(2000))])
    if (outcome.kind !== 'appended') return { version: seq - 1, outcome }
  }
}

describe('a disk of two megabytes', () => {
  it('takes what fits, says when it is full, loses nothing and goes on when there is room', async (context) => {
    const disk = join(folder, 'disk')
    await mkdir(disk)
    if (!mount(disk, '-t', 'tmpfs', '-o', 'size=2m', 'tmpfs'))
      return context.skip('no disk can be mounted here; it takes root')
    const store = valueOf(await openStore({ folder: disk }))
    await store.notes.add('own', 'm1', log([added()]))
    const full = await fillUp(store, 1)
    expect(full.outcome).toMatchObject({ kind: 'not-kept', problem: { code: 'disk-full' } })
    expect(full.version).toBeGreaterThan(5)
    expect(await filePhotoStore(join(disk, 'photos')).put(await picture(1))).toMatchObject({ kind: 'not-kept', problem: { code: 'disk-full' } }) // prettier-ignore
    const db = valueOf(openForReading(disk))
    const photos = () => photosInFolder(join(disk, 'photos'))
    const backup = await makeBackup({ db, photos, madeAt: '2026-03-18T06:00:00.000Z' }, join(disk, 'b.zip'))
    await db.destroy()
    expect(backup).toMatchObject({ kind: 'refused', problems: [{ code: 'disk-full' }] })
    expect((await readdir(disk)).filter((name) => !name.startsWith('bench.sqlite'))).toEqual(['photos'])
    spawnSync('mount', ['-o', 'remount,size=8m', disk])
    const next = said(full.version + 1, 'room again')
    expect(await store.notes.append('m1', full.version, [next])).toEqual({ kind: 'appended' })
    expect((await store.notes.notes('m1')).map(({ seq }) => seq)).toEqual(Array.from({ length: full.version + 1 }, (_, i) => i + 1)) // prettier-ignore
    await store.close()
    expect((await lookOver(disk)).problems).toEqual([])
  })
})

describe('a folder that can only be read', () => {
  it('is refused at the start, and said when it becomes so', async (context) => {
    const [real, seen] = [join(folder, 'real'), join(folder, 'seen')]
    await mkdir(real)
    await mkdir(seen)
    if (!mount(seen, '--bind', real)) return context.skip('no folder can be mounted read-only here; it takes root')
    await fillSmall(real)
    await backUp(real, join(folder, 'b.zip'))
    spawnSync('mount', ['-o', 'remount,ro,bind', seen])
    const atStart = { code: 'folder-not-writable', where: seen, what: 'The data folder cannot be written: it is on a disk that can only be read' } // prettier-ignore
    expect(await openStore({ folder: seen })).toMatchObject({ kind: 'refused', problems: [atStart] })
    // A connection that may only read stands for a store whose disk turned read-only under it: SQLite answers both alike.
    const reading = valueOf(openForReading(real))
    const outcome = await storesOn(reading, silent).notes.append('m1', 3, [said(4, 'late')])
    expect(outcome).toMatchObject({ kind: 'not-kept', problem: { code: 'not-writable' } })
    await reading.destroy()
    expect(await filePhotoStore(join(seen, 'photos')).put(await picture(9))).toMatchObject({ kind: 'not-kept', problem: { code: 'not-writable' } }) // prettier-ignore
    const into = await restoreBackup(join(folder, 'b.zip'), join(seen, 'new'), (where) => openStore({ folder: where }))
    expect(into).toMatchObject({ kind: 'refused', problems: [{ code: 'not-writable', what: expect.stringContaining('can only be read') as string }] }) // prettier-ignore
    expect((await lookOver(real)).problems).toEqual([])
  })
})

describe('a clock that was set back', () => {
  it('leaves notes in the order they were written; the books go by the day the clock showed', async () => {
    const store = valueOf(await openStore({ folder }))
    const [first, second, third] = log([added(), { kind: 'spent', costMinor: 100, text: 'belt' }, { kind: 'spent', costMinor: 30, text: 'tape' }]) // prettier-ignore
    await store.notes.add('own', 'm1', [first, second])
    const earlier = { ...third, at: '2026-01-02T08:00:00.000Z' }
    expect(await store.notes.append('m1', 2, [earlier])).toEqual({ kind: 'appended' })
    expect((await store.notes.notes('m1')).map(({ id }) => id)).toEqual(['n1', 'n2', 'n3'])
    const months = await store.books.months('own', 'calendar')
    const cash = months.filter(({ account }) => account === 'cash').map(({ month, minor }) => [month, Math.abs(minor)])
    expect(cash).toEqual([
      ['2026-01', 30],
      ['2026-03', 600],
    ])
    await store.close()
    await backUp(folder, join(folder, 'out', 'b.zip'))
    valueOf(
      await restoreBackup(join(folder, 'out', 'b.zip'), join(folder, 'again'), (where) => openStore({ folder: where })),
    )
    expect(await everythingIn(join(folder, 'again'))).toEqual(await everythingIn(folder))
  })
})

describe('another program on the same folder', () => {
  it('is waited for while it writes; when it does not end, that is said and nothing is lost', async () => {
    const store = valueOf(await openStore({ folder }))
    await store.notes.add('own', 'm1', log([added()]))
    const other = new Database(join(folder, 'bench.sqlite'))
    other.exec('begin immediate')
    setTimeout(() => other.exec('commit'), 400)
    expect(await store.notes.append('m1', 1, [said(2, 'waited')])).toEqual({ kind: 'appended' })
    other.exec('begin immediate')
    expect(await store.notes.append('m1', 2, [said(3, 'busy')])).toMatchObject({ kind: 'not-kept', problem: { code: 'busy', what: 'Another program is writing to the store' } }) // prettier-ignore
    other.exec('rollback')
    other.close()
    expect(await store.notes.append('m1', 2, [said(3, 'busy')])).toEqual({ kind: 'appended' })
    await store.close()
    expect((await lookOver(folder)).problems).toEqual([])
  })
})
