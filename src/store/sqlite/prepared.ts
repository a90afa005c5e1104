import type { SqliteStatement } from 'kysely'
import type Database from 'libsql'

/** Statements kept at the most, and the longest text of one: an insert of many rows has another text each time. */
const mostStatements = 200
const longestText = 8000

/** What alters tables may alter what a statement gives. */
const keepable = /^\s*(select|with|insert|update|delete)\b/i

/** Prepares statements of a connection. */
type Prepare = (sql: string) => SqliteStatement

/**
 * Keeps statements by their text, for preparing one takes as long as a small question does. A connection asks one thing at a time, and each
 * is read to its end, so none is asked for while it is still being read; what is read row by row gets a statement of its own. One that
 * failed is let go of: in libsql 0.5 it may stay in progress.
 */
export const keepingPrepared = (database: Database.Database): Prepare => {
  const kept = new Map<string, SqliteStatement>()
  const guarded = (sql: string): SqliteStatement => {
    const statement = database.prepare(sql)
    const orLetGo = <Answer>(ask: () => Answer): Answer => {
      try {
        return ask()
      } catch (fault) {
        kept.delete(sql)
        throw fault
      }
    }
    return {
      reader: statement.reader,
      all: (values) => orLetGo(() => statement.all(values)),
      run: (values) => orLetGo(() => statement.run(values)),
      iterate: (values) => database.prepare(sql).iterate(values),
    }
  }
  return (sql) => {
    const there = kept.get(sql)
    if (there !== undefined) return there
    if (!keepable.test(sql)) {
      kept.clear()
      return database.prepare(sql)
    }
    const statement = guarded(sql)
    if (sql.length > longestText) return statement
    kept.set(sql, statement)
    const [oldest] = kept.keys()
    if (kept.size > mostStatements && oldest !== undefined) kept.delete(oldest)
    return statement
  }
}
