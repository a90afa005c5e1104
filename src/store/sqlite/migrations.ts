import { sql, type Kysely, type Migration } from 'kysely'
import type { Result } from '../../base/result.ts'
import { commonMigrations } from '../sql/common-migrations.ts'
import { migrateWith } from '../sql/migrate.ts'
import type { Tables } from '../sql/tables.ts'
import { addShelfAndBooks } from './migration-shelf-and-books.ts'
import { addWhoWroteIt } from './migration-who-wrote-it.ts'

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
  '0005-who-wrote-it': { up: addWhoWroteIt },
  ...commonMigrations,
}

/** Brings the tables up to date. Refused when they were written by a newer program. */
export const migrate = (db: Kysely<Tables>, folder: string): Promise<Result<null>> =>
  migrateWith(db, folder, migrations)
