import { spawnSync } from 'node:child_process'
import { mkdir, readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { sql } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { valueOf } from '../../src/base/result.ts'
import { openStore } from '../../src/store/sqlite/open-store.ts'
import { tempFolder } from '../support/filled-store.ts'
import { makeLives, type Lives, type Work } from './lives.ts'

let lives: Lives
let folder = ''
let remove: () => Promise<void>
beforeAll(async () => {
  lives = await makeLives()
  ;({ folder, remove } = await tempFolder())
})
afterAll(async () => {
  await lives.remove()
  await remove()
})

describe('what is acknowledged', () => {
  // sqlite.org/pragma.html: with synchronous = FULL (2) and a WAL, each commit syncs the WAL before it returns. From memory.
  it('is written by a connection that syncs every commit', async () => {
    const store = valueOf(await openStore({ folder: join(folder, 'pragmas') }))
    const one = async (name: string) => Object.values((await sql.raw(`PRAGMA ${name}`).execute(store.db)).rows[0] as Record<string, unknown>)[0] // prettier-ignore
    expect(await one('synchronous')).toBe(2)
    expect(await one('journal_mode')).toBe('wal')
    await store.close()
  })

  const hasTracer = spawnSync('strace', ['-f', 'true']).status === 0
  const trace = async (work: Work): Promise<readonly string[]> => {
    const place = join(folder, work)
    await mkdir(place, { recursive: true })
    const traces = join(folder, `${work}-trace`)
    const calls = 'trace=openat,open,close,write,writev,pwrite64,fsync,fdatasync,rename,renameat,renameat2,mkdir'
    spawnSync('strace', ['-f', '-y', '-s', '60', '-qq', '-e', calls, '-o', traces, process.execPath, ...lives.args, work, place, '1', '3']) // prettier-ignore
    return (await readFile(traces, 'utf8')).split('\n')
  }

  it(
    'of notes was synced to the disk before the answer, as the system saw it',
    { timeout: 60_000 },
    async (context) => {
      if (!hasTracer) return context.skip('there is no strace here, or it may not watch system calls')
      const lines = await trace('append')
      let unsynced = false
      let acknowledged = 0
      for (const line of lines) {
        if (/ (pwrite64|write)\(\d+<[^>]*bench\.sqlite-wal>/.test(line)) unsynced = true
        if (/ f(data)?sync\(\d+<[^>]*bench\.sqlite-wal>/.test(line)) unsynced = false
        if (!/ write\(1<.*"(notes|both) /.test(line)) continue
        acknowledged++
        expect(unsynced, line).toBe(false)
      }
      expect(acknowledged).toBeGreaterThan(5)
    },
  )

  it(
    'of photographs was synced, named, and its name synced before the answer',
    { timeout: 60_000 },
    async (context) => {
      if (!hasTracer) return context.skip('there is no strace here, or it may not watch system calls')
      await valueOf(await openStore({ folder: join(folder, 'photographs') })).close()
      const lines = await trace('photographs')
      const steps: string[] = []
      let acknowledged = 0
      for (const line of lines) {
        if (/ f(data)?sync\(\d+<[^>]*\.part>/.test(line)) steps.push('sync')
        if (/ rename\w*\(.*\.part"/.test(line)) steps.push('rename')
        if (/ f(data)?sync\(\d+<[^>]*\/photos\/[0-9a-f]{2}>/.test(line)) steps.push('sync folder')
        if (!/ write\(1<.*"photo /.test(line)) continue
        acknowledged++
        // The sums, the small one, the large one.
        const each = ['sync', 'rename', 'sync folder']
        expect(steps.splice(0), line).toEqual([...each, ...each, ...each])
      }
      expect(acknowledged).toBe(3)
      expect((await readdir(join(folder, 'photographs', 'photos'))).length).toBeGreaterThan(0)
    },
  )
})
