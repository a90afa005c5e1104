import { sql, type CreateTableBuilder, type Kysely, type Migration } from 'kysely'
import type { Result } from '../../base/result.ts'
import { commonMigrations } from '../sql/common-migrations.ts'
import { migrateWith } from '../sql/migrate.ts'
import type { Tables } from '../sql/tables.ts'
import { bookMonthSteps } from './book-month-steps.ts'

/** Text that is put in order by its bytes, as SQLite does, whatever language the database was made for. */
const text = sql`text collate "C"`

/**
 * The first step makes what SQLite came to in its steps 0001 to 0005. Steps taken by name in order; one that was given out is never
 * changed; a new one is added.
 */
const migrations: Readonly<Record<string, Migration>> = {
  '0005-until-who-wrote-it': {
    up: async (db: Kysely<unknown>) => {
      await addLogs(db)
      await addOthers(db)
      await addBooks(db)
    },
  },
  ...commonMigrations,
}

/** Brings the tables up to date. Refused when they were written by a newer program. */
export const migrate = (db: Kysely<Tables>, where: string): Promise<Result<null>> => migrateWith(db, where, migrations)

type Table = CreateTableBuilder<string, string>

const newTable = (db: Kysely<unknown>, name: string): Table => db.schema.createTable(name)

const columns = (table: Table, type: typeof text | 'bigint' | 'integer', ...names: readonly string[]): Table =>
  names.reduce((made, name) => made.addColumn(name, type, (column) => column.notNull()), table)

/** Columns in which a log keeps what lists and books need of it. */
const projected = (table: Table): Table =>
  table
    .addColumn('open', 'integer', (column) => column.notNull().defaultTo(1))
    .addColumn('label', text, (column) => column.notNull().defaultTo(''))
    .addColumn('group_name', text, (column) => column.notNull().defaultTo(''))
    .addColumn('currency', text, (column) => column.notNull().defaultTo(''))
    .addColumn('count', 'bigint', (column) => column.notNull().defaultTo(0))
    .addColumn('stock_minor', 'bigint', (column) => column.notNull().defaultTo(0))
    .addColumn('summary', text)

const ranked = (db: Kysely<unknown>, name: string): Table =>
  newTable(db, name).addColumn('rank', 'bigserial', (column) => column.primaryKey())

const addLogs = async (db: Kysely<unknown>): Promise<void> => {
  let machine = projected(columns(columns(ranked(db, 'machine'), text, 'id', 'bench'), 'integer', 'version'))
  for (const name of ['complaint', 'source', 'came_day', 'left_day', 'exit_name']) {
    machine = machine.addColumn(name, text)
  }
  for (const name of ['paid_minor', 'received_minor', 'cost_minor', 'profit_minor']) {
    machine = machine.addColumn(name, 'bigint', (column) => column.notNull().defaultTo(0))
  }
  await machine
    .addColumn('minutes', 'double precision', (column) => column.notNull().defaultTo(0))
    .addUniqueConstraint('machine_id', ['id'])
    .execute()
  await entries(db, 'note', ['machine'])
    .addForeignKeyConstraint('note_machine', ['machine'], 'machine', ['id'])
    .execute()
  await projected(columns(columns(ranked(db, 'log'), text, 'kind', 'id', 'bench'), 'integer', 'version'))
    .addUniqueConstraint('log_key', ['kind', 'id'])
    .execute()
  await entries(db, 'log_entry', ['kind', 'log']).execute()
  for (const [name, table, ...of] of indexes)
    await db.schema
      .createIndex(name)
      .on(table)
      .columns([...of])
      .execute()
}

/** A table of notes or entries, numbered in their log. */
const entries = (db: Kysely<unknown>, name: 'note' | 'log_entry', log: readonly string[]): Table =>
  columns(newTable(db, name), text, ...log, 'id')
    .addColumn('seq', 'integer', (column) => column.notNull().check(sql`seq >= 1`))
    .addColumn('at', text, (column) => column.notNull())
    .addColumn('content', text, (column) => column.notNull())
    .addColumn('by', text)
    .addPrimaryKeyConstraint(`${name}_key`, [...log, 'id'])
    .addUniqueConstraint(`${name}_place`, [...log, 'seq'])

/** Lists and sums read these indexes alone: a row of the table is long, for it holds the summary. */
const indexes = [
  ['machine_bench', 'machine', 'bench'],
  ['machine_list', 'machine', 'bench', 'open', 'rank', 'label'],
  ['machine_result', 'machine', 'bench', 'open', 'left_day', 'currency', 'group_name', 'complaint', 'source', 'exit_name', 'received_minor', 'cost_minor', 'profit_minor', 'minutes'], // prettier-ignore
  ['machine_came', 'machine', 'bench', 'came_day', 'currency', 'paid_minor'],
  ['machine_left', 'machine', 'bench', 'left_day', 'currency'],
  ['log_list', 'log', 'bench', 'kind', 'open', 'rank', 'label'],
  ['log_group', 'log', 'bench', 'kind', 'open', 'group_name', 'rank', 'currency', 'count', 'stock_minor'],
] as const

const addOthers = async (db: Kysely<unknown>): Promise<void> => {
  await columns(ranked(db, 'own_blueprint'), text, 'id', 'saved_at', 'content')
    .addUniqueConstraint('own_blueprint_id', ['id'])
    .execute()
  await columns(ranked(db, 'settings_change'), text, 'at', 'content').execute()
  await columns(newTable(db, 'photo'), text, 'id', 'size', 'sha256')
    .addColumn('bytes', 'bytea', (column) => column.notNull())
    .addPrimaryKeyConstraint('photo_key', ['id', 'size'])
    .execute()
  // A photograph is as small as it gets already.
  await sql`alter table photo alter column bytes set storage external`.execute(db)
}

const addBooks = async (db: Kysely<unknown>): Promise<void> => {
  const lines = columns(newTable(db, 'book_line'), text, 'kind', 'log', 'bench', 'currency', 'note', 'day', 'month', 'month_from_6th', 'account') // prettier-ignore
  await lines
    .addColumn('minor', 'bigint', (column) => column.notNull())
    .addColumn('minutes', 'double precision', (column) => column.notNull())
    // SQLite numbers every row by itself, under this name.
    .addColumn('rowid', 'bigserial', (column) => column.primaryKey())
    .execute()
  await db.schema.createIndex('book_line_log').on('book_line').columns(['kind', 'log']).execute()
  for (const month of ['month', 'month_from_6th']) {
    await db.schema.createIndex(`book_line_${month}`).on('book_line').columns(['bench', month, 'day']).execute()
  }
  await columns(columns(newTable(db, 'book_month'), text, 'bench', 'month_kind', 'month', 'currency', 'account'), 'bigint', 'lines', 'minor', 'milliminutes') // prettier-ignore
    .addPrimaryKeyConstraint('book_month_key', ['bench', 'month_kind', 'month', 'currency', 'account'])
    .execute()
  for (const step of bookMonthSteps) await step.execute(db)
}
