import Database from 'libsql'
import { Kysely, sql, SqliteDialect, type Migration } from 'kysely'
import { describe, expect, it } from 'vitest'
import { migrateWith } from '../../../src/store/sql/migrate.ts'
import { BenchDialect } from '../../../src/store/sqlite/bench-dialect.ts'
import { lockingDatabase } from '../../../src/store/sqlite/locking-database.ts'
import type { Tables } from '../../../src/store/sql/tables.ts'

const whole: Migration = { up: (db) => db.schema.createTable('first').addColumn('id', 'text').execute() }
/** Makes a table, changes another and then cannot go on. */
const broken: Migration = {
  up: async (db: Kysely<unknown>) => {
    await db.schema.createTable('second').addColumn('id', 'text').execute()
    await db.schema.alterTable('first').addColumn('more', 'text').execute()
    await sql`insert into no_such_table values (1)`.execute(db)
  },
}
const mended: Migration = {
  up: async (db: Kysely<unknown>) => {
    await db.schema.createTable('second').addColumn('id', 'text').execute()
    await db.schema.alterTable('first').addColumn('more', 'text').execute()
  },
}

const openWith = (Dialect: typeof SqliteDialect) => {
  const database = lockingDatabase(new Database(':memory:'))
  return new Kysely<Tables>({ dialect: new Dialect({ database }) })
}

const tablesOf = async (db: Kysely<Tables>): Promise<readonly string[]> => {
  const made = await sql<{ text: string }>`select sql as text from sqlite_master where name in ('first', 'second') order by name`.execute(db) // prettier-ignore
  return made.rows.map(({ text }) => text)
}

describe('a step to new tables that cannot be made to its end', () => {
  it('leaves nothing of itself behind, and can be made again', async () => {
    const db = openWith(BenchDialect)
    expect((await migrateWith(db, 'here', { '1': whole })).kind).toBe('ok')
    const before = await tablesOf(db)
    expect(before).toHaveLength(1)
    expect(await migrateWith(db, 'here', { '1': whole, '2': broken })).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'store-not-updated' }],
    })
    expect(await tablesOf(db)).toEqual(before)
    expect((await migrateWith(db, 'here', { '1': whole, '2': mended })).kind).toBe('ok')
    expect(await tablesOf(db)).toEqual([expect.stringContaining('"more"'), expect.stringContaining('"second"')])
    await db.destroy()
  })

  // What the dialect is there for: sqlite.org/lang_transaction.html has tables made in transactions (from memory), Kysely takes it not to.
  it('would leave half of itself behind with the dialect as it comes, and could never be made again', async () => {
    const db = openWith(SqliteDialect)
    await migrateWith(db, 'here', { '1': whole, '2': broken })
    expect(await tablesOf(db)).toHaveLength(2)
    expect((await migrateWith(db, 'here', { '1': whole, '2': mended })).kind).toBe('refused')
    await db.destroy()
  })
})
