import { readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import Database from 'libsql'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { valueOf } from '../../../../src/base/result.ts'
import { mendLists } from '../../../../src/store/backup/mend-lists.ts'
import { photoPath } from '../../../../src/store/files/photo-store.ts'
import { openStore } from '../../../../src/store/sqlite/open-store.ts'
import { backUp, fillSmall, lookOver, tempFolder } from '../../../support/filled-store.ts'

let folder = ''
let remove: () => Promise<void>
let photo = ''
beforeEach(async () => {
  ;({ folder, remove } = await tempFolder())
  photo = await fillSmall(folder)
})
afterEach(() => remove())

/** Damages the store as no program of ours would. */
const change = (sql: string): void => {
  const database = new Database(join(folder, 'bench.sqlite'))
  database.exec(`PRAGMA foreign_keys = OFF; ${sql}`)
  database.exec('PRAGMA wal_checkpoint(TRUNCATE)')
  database.close()
}
const found = async (): Promise<readonly string[]> =>
  (await lookOver(folder)).problems.map(({ code, where }) => `${code} at ${where}`)

describe('looking whether a store is whole', () => {
  it('finds nothing in one that is', async () => {
    expect(await found()).toEqual([])
  })

  it.each([
    [`update note set content = '{"kind":"said"}' where machine = 'm1' and seq = 2`, ['damaged-row at machine m1, note 2 (n2)']], // prettier-ignore
    [`update note set content = 'x' where machine = 'm2' and seq = 1`, ['damaged-row at machine m2, note 1 (n1)']],
    [`delete from note where machine = 'm2' and seq = 2`, ['damaged-log at machine m2', 'stale-list at machine m2']],
    [`update note set seq = 9 where machine = 'm2' and seq = 2`, ['damaged-log at machine m2']],
    [`update machine set version = 5 where id = 'm2'`, ['damaged-log at machine m2']],
    [`update log_entry set seq = 2`, ['damaged-log at expense e1']],
    [`delete from log`, ['damaged-log at e1, note a']],
    [`update own_blueprint set content = '{}'`, []],
    [`insert into own_blueprint (id, saved_at, content) values ('own-a-1', '', '{}')`, ['damaged-row at blueprint own-a-1']], // prettier-ignore
    [`update settings_change set content = '{"hourMinor":-1}'`, ['damaged-row at change 1 of the settings']],
    [`update machine set paid_minor = 4 where id = 'm1'`, ['stale-list at machine m1']],
    [`update machine set summary = json_set(summary, '$.name', 'Other') where id = 'm1'`, ['stale-list at machine m1']],
    [`update book_month set minor = minor + 1 where account = 'cash' and month_kind = 'calendar'`, ['stale-list at month own 2026-03 GBP cash']], // prettier-ignore
  ])('names what is damaged: %s', async (sql, expected) => {
    change(sql)
    expect(await found()).toEqual(expected)
  })

  it('makes what lists and books keep again, whatever became of it', async () => {
    change(
      `update machine set summary = '{}', open = 0; delete from book_line where minor > 500; update book_month set minor = 7`,
    )
    expect((await found()).length).toBeGreaterThan(3)
    const store = valueOf(await openStore({ folder }))
    await mendLists(store.db)
    await store.close()
    expect(await found()).toEqual([])
  })

  it('finds a page of the file that was overwritten', async () => {
    change('')
    const path = join(folder, 'bench.sqlite')
    const bytes = await readFile(path)
    // The second half of every page but the first: cells of the b-trees (sqlite.org/fileformat2.html, 1.6).
    const page = bytes.readUInt16BE(16)
    for (let at = page; at < bytes.length; at += page) bytes.fill(0xa5, at + page / 2, at + page)
    await writeFile(path, bytes)
    const { problems } = await lookOver(folder)
    expect(problems.map(({ code }) => code)).toContain('damaged-store')
  })

  it('finds photographs that changed, small or large, and those that are gone', async () => {
    for (const size of ['small', 'large'] as const) {
      const path = photoPath(join(folder, 'photos'), photo, size)!
      const bytes = await readFile(path)
      const changed = Buffer.from(bytes)
      changed[changed.length >> 1] = changed[changed.length >> 1] ^ 1
      await writeFile(path, changed)
      expect(await found()).toEqual([`photograph-damaged at photograph ${photo}, ${size}`])
      expect((await backUp(folder, join(folder, 'b.zip'))).lost).toMatchObject([{ code: 'photograph-damaged' }])
      await writeFile(path, bytes)
    }
    await rm(photoPath(join(folder, 'photos'), photo, 'large')!)
    expect(await found()).toEqual([`photograph-missing at photograph ${photo}`])
    expect((await backUp(folder, join(folder, 'b.zip'))).lost).toMatchObject([{ code: 'photograph-missing' }])
  })

  it('looks at a photograph from before sums were kept', async () => {
    const path = photoPath(join(folder, 'photos'), photo, 'large')!
    await rm(path.replace('.jpg', '.sha256'))
    expect(await found()).toEqual([])
    await writeFile(path, (await readFile(path)).subarray(0, -20))
    expect(await found()).toEqual([`photograph-damaged at photograph ${photo}, large`])
  })
})
