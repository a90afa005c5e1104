import type { SqliteDatabase, SqliteStatement } from 'kysely'
import type Database from 'libsql'

/**
 * The database as Kysely drives it, with transactions that take the write lock at once. Every transaction here writes; one
 * that read first could not write any more once another program has written meanwhile.
 *
 * Statements that begin and end a transaction go through `exec`: in libsql 0.5 a prepared statement that fails because the
 * store is busy stays in progress, and no later transaction of that connection can commit (libsql-js pull request 238).
 */
export const lockingDatabase = (database: Database.Database): SqliteDatabase => ({
  close: () => void database.close(),
  prepare: (sql) => {
    const control = controls[sql]
    if (control !== undefined) return controlStatement(() => database.exec(control))
    return database.prepare(sql)
  },
})

/** As Kysely's SQLite driver writes them, and what is run instead. */
const controls: Readonly<Record<string, string>> = { begin: 'begin immediate', commit: 'commit', rollback: 'rollback' }

const controlStatement = (run: () => void): SqliteStatement => ({
  reader: false,
  all: () => [],
  iterate: () => [][Symbol.iterator](),
  run: () => {
    run()
    return { changes: 0, lastInsertRowid: 0 }
  },
})
