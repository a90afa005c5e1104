import { join } from 'node:path'
import { Kysely } from 'kysely'
import Database from 'libsql'
import { problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import type { Tables } from '../sql/tables.ts'
import { BenchDialect } from './bench-dialect.ts'
import { lockingDatabase } from './locking-database.ts'

/**
 * Opens the store of a folder beside the program that works with it, only to read: a transaction here reads one state of the store and
 * holds up nobody, neither those that write nor the program's own connection. The store must be there and up to date.
 */
export const openForReading = (folder: string): Result<Kysely<Tables>> => {
  try {
    return ok(connect(join(folder, 'bench.sqlite')))
  } catch {
    return refused(
      problem('not-a-store', folder, 'The file of the store there is not a store', 'Put a backup in its place'),
    )
  }
}

const connect = (path: string): Kysely<Tables> => {
  const database = new Database(path)
  try {
    database.exec('PRAGMA busy_timeout = 5000')
    database.exec('PRAGMA query_only = ON')
  } catch (fault) {
    database.close()
    throw fault
  }
  return new Kysely<Tables>({ dialect: new BenchDialect({ database: lockingDatabase(database, 'begin') }) })
}
