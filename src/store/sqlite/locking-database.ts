import type { SqliteDatabase, SqliteStatement } from 'kysely'
import type Database from 'libsql'
import { keepingPrepared } from './prepared.ts'

/**
 * The database as Kysely drives it, with transactions that take the write lock at once. Every transaction here writes; one
 * that read first could not write any more once another program has written meanwhile. A connection that only reads begins with
 * `begin`.
 *
 * Statements that begin and end a transaction go through `exec`: in libsql 0.5 a prepared statement that fails because the
 * store is busy stays in progress, and no later transaction of that connection can commit (libsql-js pull request 238).
 */
export const lockingDatabase = (
  database: Database.Database,
  begin: 'begin' | 'begin immediate' = 'begin immediate',
): SqliteDatabase => {
  const prepare = keepingPrepared(database)
  return {
    close: () => void database.close(),
    prepare: (sql) => {
      // A full disk makes SQLite take the transaction back by itself; taking it back once more would hide why it failed.
      if (sql === 'rollback') return controlStatement(() => database.inTransaction && database.exec(sql))
      if (controls.includes(sql)) return controlStatement(() => database.exec(sql === 'begin' ? begin : sql))
      return prepare(sql)
    },
  }
}

/** As Kysely's SQLite driver writes them. */
const controls: readonly string[] = ['begin', 'commit']

const controlStatement = (run: () => unknown): SqliteStatement => ({
  reader: false,
  all: () => [],
  iterate: () => [][Symbol.iterator](),
  run: () => {
    run()
    return { changes: 0, lastInsertRowid: 0 }
  },
})
