import { mkdir, readdir, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { valueOf } from '../../../../src/base/result.ts'
import { backUpOnce } from '../../../../src/server/backups.ts'
import { checkBackup } from '../../../../src/store/backup/check-backup.ts'
import { openBenchStore, type BenchStore } from '../../../../src/store/open-bench-store.ts'
import { photoPath } from '../../../../src/store/files/photo-store.ts'
import { fillSmall, tempFolder } from '../../../support/filled-store.ts'
import { added, log } from '../../../support/notes.ts'

let folder = ''
let remove: () => Promise<void>
let store: BenchStore
let photo = ''
beforeEach(async () => {
  ;({ folder, remove } = await tempFolder())
  photo = await fillSmall(folder)
  store = valueOf(await openBenchStore({ folder }))
})
afterEach(async () => {
  await store.close()
  await remove()
})

const backups = (): string => join(folder, 'backups')
const look = (day: number, keep = 3, where = backups()) =>
  backUpOnce({ folder }, store, { folder: where, keep }, `2026-03-${String(day).padStart(2, '0')}T06:00:00.000Z`)
const write = (day: number) => store.notes.add('own', `day-${day}`, log([added()], `day-${day}`))

describe('a backup a day', () => {
  it('is made when something was written, and the oldest go once the new one is whole', async () => {
    for (let day = 1; day <= 6; day++) {
      await write(day)
      expect((await look(day)).kind).toBe('made')
      expect((await look(day)).kind).toBe('not-yet')
    }
    const names = (await readdir(backups())).sort()
    expect(names).toEqual([4, 5, 6].map((day) => `thrum-2026-03-0${day}T06-00-00.zip`))
    for (const name of names) expect((await checkBackup(join(backups(), name))).problems).toEqual([])
    expect((await look(9)).kind).toBe('unchanged')
  })

  it('leaves files of other names alone', async () => {
    await mkdir(backups())
    await writeFile(join(backups(), 'mine.zip'), 'mine')
    for (let day = 1; day <= 3; day++) {
      await write(day)
      await look(day, 1)
    }
    expect((await readdir(backups())).sort()).toEqual(['mine.zip', 'thrum-2026-03-03T06-00-00.zip'])
  })

  it('keeps the old ones while a photograph is lost that they may hold', async () => {
    await look(1, 1)
    await rm(photoPath(join(folder, 'photos'), photo, 'large')!)
    await write(2)
    const outcome = await look(2, 1)
    expect(outcome).toMatchObject({ kind: 'made', backup: { lost: [{ code: 'photograph-missing' }] }, removed: [] })
    expect((await readdir(backups())).length).toBe(2)
  })

  it('fails with its reason and throws nothing, and the one before stays', async () => {
    await look(1)
    await write(2)
    await writeFile(join(folder, 'file'), '')
    expect(await look(2, 3, join(folder, 'file'))).toMatchObject({
      kind: 'failed',
      problems: [{ code: 'not-backed-up' }],
    })
    expect((await readdir(backups())).length).toBe(1)
  })

  it('is made again where the clock was set back', async () => {
    await look(9)
    await write(2)
    expect((await look(2)).kind).toBe('made')
  })
})
