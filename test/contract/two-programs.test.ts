import { execFile } from 'node:child_process'
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { describe, expect, it } from 'vitest'
import { valueOf } from '../../src/base/result.ts'
import { openStore } from '../../src/store/postgres/open-store.ts'
import { added, log } from '../support/notes.ts'
import { postgresHere, sharedPostgres } from '../support/postgres.ts'

const run = promisify(execFile)
const each = 200
const isBuilt = existsSync(new URL('../../dist/store/postgres/open-store.js', import.meta.url))

describe.runIf(postgresHere() && isBuilt)('two programs on one database', () => {
  it('add notes to the same machine, and none is lost or written twice', async () => {
    const url = await (await sharedPostgres()).newDatabase()
    const store = valueOf(await openStore({ url }))
    await store.notes.add('own', 'm1', log([added()]))
    const script = fileURLToPath(new URL('../../scripts/append-many.mjs', import.meta.url))
    const programs = ['one', 'other'].map((name) => run(process.execPath, [script, url, name, String(each)]))
    const conflicts = (await Promise.all(programs)).map(({ stdout }) => Number(stdout))
    console.log(`${2 * each} notes of two programs; asked again after a conflict: ${conflicts.join(' and ')} times`)
    const notes = await store.notes.notes('m1')
    expect(notes.map(({ seq }) => seq)).toEqual(Array.from({ length: 2 * each + 1 }, (_, i) => i + 1))
    for (const name of ['one', 'other']) {
      const own = notes.filter(({ id }) => id.startsWith(`${name}-`)).map(({ id }) => id)
      expect(own).toEqual(Array.from({ length: each }, (_, i) => `${name}-${i}`))
    }
    // They did stand in each other's way, or this shows nothing.
    expect(conflicts[0] + conflicts[1]).toBeGreaterThan(0)
    await store.close()
  })
})
