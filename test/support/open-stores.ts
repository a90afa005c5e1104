import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { valueOf, type Result } from '../../src/base/result.ts'
import { openStore as openPostgres } from '../../src/store/postgres/open-store.ts'
import type { OpenStore } from '../../src/store/sql/stores-on.ts'
import { openStore as openSqlite } from '../../src/store/sqlite/open-store.ts'
import { postgresHere, sharedPostgres } from './postgres.ts'

/** An open store for one test, which can be opened again as another start of the program would. */
export type StoreForTest = {
  readonly store: OpenStore
  readonly again: () => Promise<OpenStore>
  /** Another program's store on the same data, beside the first. */
  readonly other: () => Promise<OpenStore>
  readonly close: () => Promise<void>
}

const forTest = async (open: () => Promise<Result<OpenStore>>, remove: () => Promise<void>): Promise<StoreForTest> => {
  const store = valueOf(await open())
  const opened = new Set([store])
  const other = async (): Promise<OpenStore> => {
    const next = valueOf(await open())
    opened.add(next)
    return next
  }
  const closeAll = async (): Promise<void> => {
    for (const one of opened) await one.close()
    opened.clear()
  }
  return {
    store,
    other,
    again: async () => {
      await closeAll()
      return other()
    },
    close: async () => {
      await closeAll()
      await remove()
    },
  }
}

/** A store in a folder of its own. */
export const sqliteForTest = async (): Promise<StoreForTest> => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-store-'))
  return forTest(
    () => openSqlite({ folder }),
    () => rm(folder, { recursive: true }),
  )
}

/** A store in a database of its own, on a real server. */
export const postgresForTest = async (): Promise<StoreForTest> => {
  const url = await (await sharedPostgres()).newDatabase()
  return forTest(
    () => openPostgres({ url }),
    () => Promise.resolve(),
  )
}

/** The kinds of database that can be tested here, by name: one suite runs on each of them. */
export const databasesHere: readonly (readonly [string, () => Promise<StoreForTest>])[] = [
  ['SQLite', sqliteForTest],
  ...(postgresHere() ? ([['PostgreSQL', postgresForTest]] as const) : []),
]
