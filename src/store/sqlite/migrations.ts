import { setTimeout } from 'node:timers/promises'
import { Migrator, sql, type Kysely, type Migration } from 'kysely'
import { problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import type { Tables } from './database.ts'
import { addShelfAndBooks } from './migration-shelf-and-books.ts'

/** Steps from nothing to the tables of today, by name in order. A step that was given out is never changed; a new one is added. */
const migrations: Readonly<Record<string, Migration>> = {
  '0001-machines-and-notes': {
    up: async (db: Kysely<unknown>) => {
      await db.schema
        .createTable('machine')
        .addColumn('rank', 'integer', (column) => column.primaryKey().autoIncrement())
        .addColumn('id', 'text', (column) => column.notNull().unique())
        .addColumn('bench', 'text', (column) => column.notNull())
        .addColumn('version', 'integer', (column) => column.notNull())
        .execute()
      await db.schema
        .createTable('note')
        .addColumn('machine', 'text', (column) => column.notNull().references('machine.id'))
        .addColumn('id', 'text', (column) => column.notNull())
        .addColumn('seq', 'integer', (column) => column.notNull().check(sql`seq >= 1`))
        .addColumn('at', 'text', (column) => column.notNull())
        .addColumn('content', 'text', (column) => column.notNull())
        .addPrimaryKeyConstraint('note_key', ['machine', 'id'])
        .addUniqueConstraint('note_place', ['machine', 'seq'])
        .execute()
      await db.schema.createIndex('machine_bench').on('machine').column('bench').execute()
    },
  },
  '0002-own-blueprints': {
    up: async (db: Kysely<unknown>) => {
      await db.schema
        .createTable('own_blueprint')
        .addColumn('rank', 'integer', (column) => column.primaryKey().autoIncrement())
        .addColumn('id', 'text', (column) => column.notNull().unique())
        .addColumn('saved_at', 'text', (column) => column.notNull())
        .addColumn('content', 'text', (column) => column.notNull())
        .execute()
    },
  },
  '0003-settings': {
    up: async (db: Kysely<unknown>) => {
      await db.schema
        .createTable('settings_change')
        .addColumn('rank', 'integer', (column) => column.primaryKey().autoIncrement())
        .addColumn('at', 'text', (column) => column.notNull())
        .addColumn('content', 'text', (column) => column.notNull())
        .execute()
    },
  },
  '0004-shelf-and-books': { up: addShelfAndBooks },
}

/** Brings the tables up to date. Refused when they were written by a newer program. */
export const migrate = async (db: Kysely<Tables>, folder: string): Promise<Result<null>> => {
  const migrator = new Migrator({ db, provider: { getMigrations: () => Promise.resolve({ ...migrations }) } })
  const known = new Set(Object.keys(migrations))
  const made = (await appliedNames(db)).filter((name) => !known.has(name))
  if (made.length > 0) {
    return refused(
      problem(
        'newer-store',
        folder,
        'The store there was written by a newer version of Thrum',
        'Use that version or a later one',
      ),
    )
  }
  const error = await latest(migrator, triesAtStart)
  if (error === undefined) return ok(null)
  const why = error instanceof Error ? error.message : 'for a reason not given'
  return refused(
    problem(
      'store-not-updated',
      folder,
      `The store could not be brought up to date: ${why}`,
      'Try again, or put a backup in its place',
    ),
  )
}

/** Another start of the program may be at the same steps at the same moment; the one that comes late finds them made. */
const triesAtStart = 4
const pauseMs = 100

const latest = async (migrator: Migrator, tries: number): Promise<unknown> => {
  const { error } = await migrator.migrateToLatest()
  if (error === undefined || tries === 1) return error
  await setTimeout(pauseMs)
  return latest(migrator, tries - 1)
}

/** Names of the steps that were made in this store; none for a new one. */
const appliedNames = async (db: Kysely<Tables>): Promise<readonly string[]> => {
  const tables = await sql<{ name: string }>`select name from sqlite_master where name = 'kysely_migration'`.execute(db)
  if (tables.rows.length === 0) return []
  const made = await sql<{ name: string }>`select name from kysely_migration`.execute(db)
  return made.rows.map((row) => row.name)
}
