import { sql, type Kysely } from 'kysely'
import type { Tables } from '../sql/tables.ts'

/** What SQLite says of its own file and of rows that refer to none; nothing where all is well. */
export const sqliteIntegrity = async (db: Kysely<Tables>): Promise<readonly string[]> => {
  const whole = await sql<{ integrity_check: string }>`PRAGMA integrity_check(20)`.execute(db)
  const lines = whole.rows.map((row) => row.integrity_check).filter((line) => line !== 'ok')
  const stray = await sql<{ table: string; rowid: number }>`PRAGMA foreign_key_check`.execute(db)
  return [...lines, ...stray.rows.map(({ table, rowid }) => `Row ${rowid} of ${table} refers to nothing`)]
}
