import { sql, type Kysely } from 'kysely'

/** Columns in which a log keeps what lists and books need of it. */
const projected = [
  ['open', 'integer', 1],
  ['label', 'text', ''],
  ['group_name', 'text', ''],
  ['currency', 'text', ''],
  ['count', 'integer', 0],
  ['stock_minor', 'integer', 0],
] as const

/** Logs of parts, adverts, prices and spending; what lists and books need, beside the logs. */
export const addShelfAndBooks = async (db: Kysely<unknown>): Promise<void> => {
  await addLogs(db)
  await addMachineColumns(db)
  await db.schema
    .createTable('book_line')
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('log', 'text', (column) => column.notNull())
    .addColumn('bench', 'text', (column) => column.notNull())
    .addColumn('currency', 'text', (column) => column.notNull())
    .addColumn('note', 'text', (column) => column.notNull())
    .addColumn('day', 'text', (column) => column.notNull())
    .addColumn('month', 'text', (column) => column.notNull())
    .addColumn('month_from_6th', 'text', (column) => column.notNull())
    .addColumn('account', 'text', (column) => column.notNull())
    .addColumn('minor', 'integer', (column) => column.notNull())
    .addColumn('minutes', 'real', (column) => column.notNull())
    .execute()
  await db.schema.createIndex('book_line_log').on('book_line').columns(['kind', 'log']).execute()
  for (const month of ['month', 'month_from_6th']) {
    await db.schema.createIndex(`book_line_${month}`).on('book_line').columns(['bench', month, 'day']).execute()
  }
  await addBookMonths(db)
}

const addLogs = async (db: Kysely<unknown>): Promise<void> => {
  let table = db.schema
    .createTable('log')
    .addColumn('rank', 'integer', (column) => column.primaryKey().autoIncrement())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('bench', 'text', (column) => column.notNull())
    .addColumn('version', 'integer', (column) => column.notNull())
  for (const [name, type, fallback] of projected) {
    table = table.addColumn(name, type, (column) => column.notNull().defaultTo(fallback))
  }
  await table.addColumn('summary', 'text').addUniqueConstraint('log_key', ['kind', 'id']).execute()
  await db.schema.createIndex('log_list').on('log').columns(['bench', 'kind', 'open', 'rank', 'label']).execute()
  await db.schema
    .createIndex('log_group')
    .on('log')
    .columns(['bench', 'kind', 'open', 'group_name', 'rank', 'currency', 'count', 'stock_minor'])
    .execute()
  await db.schema
    .createTable('log_entry')
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('log', 'text', (column) => column.notNull())
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('seq', 'integer', (column) => column.notNull().check(sql`seq >= 1`))
    .addColumn('at', 'text', (column) => column.notNull())
    .addColumn('content', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('log_entry_key', ['kind', 'log', 'id'])
    .addUniqueConstraint('log_entry_place', ['kind', 'log', 'seq'])
    .execute()
}

const addMachineColumns = async (db: Kysely<unknown>): Promise<void> => {
  for (const [name, type, fallback] of projected) {
    await db.schema
      .alterTable('machine')
      .addColumn(name, type, (column) => column.notNull().defaultTo(fallback))
      .execute()
  }
  await db.schema.alterTable('machine').addColumn('summary', 'text').execute()
  for (const name of ['complaint', 'source', 'came_day', 'left_day', 'exit_name'] as const) {
    await db.schema.alterTable('machine').addColumn(name, 'text').execute()
  }
  for (const name of ['paid_minor', 'received_minor', 'cost_minor', 'profit_minor', 'minutes'] as const) {
    await db.schema
      .alterTable('machine')
      .addColumn(name, name === 'minutes' ? 'real' : 'integer', (column) => column.notNull().defaultTo(0))
      .execute()
  }
  // Lists and sums read these indexes alone: a row of the table is long, for it holds the summary.
  for (const [name, columns] of machineIndexes) {
    await db.schema
      .createIndex(name)
      .on('machine')
      .columns([...columns])
      .execute()
  }
}

const machineIndexes = [
  ['machine_list', ['bench', 'open', 'rank', 'label']],
  [
    'machine_result',
    ['bench', 'open', 'left_day', 'currency', 'group_name', 'complaint', 'source', 'exit_name', 'received_minor', 'cost_minor', 'profit_minor', 'minutes'], // prettier-ignore
  ],
  ['machine_came', ['bench', 'came_day', 'currency', 'paid_minor']],
  ['machine_left', ['bench', 'left_day', 'currency']],
] as const

/**
 * The sums of the books by month, kept up by triggers: they are the sums of the lines, whatever writes those. Minutes are kept in
 * thousandths, so that what is added and taken away again leaves nothing behind.
 */
const addBookMonths = async (db: Kysely<unknown>): Promise<void> => {
  await sql`
    create table book_month (
      bench text not null, month_kind text not null, month text not null, currency text not null, account text not null,
      lines integer not null, minor integer not null, milliminutes integer not null,
      primary key (bench, month_kind, month, currency, account)
    ) without rowid`.execute(db)
  await sql`create trigger book_line_put after insert on book_line begin
    ${sql.join(
      monthKinds.map(([kind, column]) => addedTo(kind, column)),
      sql` `,
    )} end`.execute(db)
  await sql`create trigger book_line_gone after delete on book_line begin
    ${sql.join(
      monthKinds.map(([kind, column]) => takenFrom(kind, column)),
      sql` `,
    )} end`.execute(db)
}

const monthKinds = [
  ['calendar', 'month'],
  ['from-6th', 'month_from_6th'],
] as const

/** Names and kinds stand in the text itself, for a trigger takes no values from outside; all of them are given above. */
const addedTo = (kind: string, column: string) =>
  sql.raw(`
    insert into book_month values (new.bench, '${kind}', new.${column}, new.currency, new.account, 1, new.minor, round(1000 * new.minutes))
      on conflict do update set lines = lines + 1, minor = minor + excluded.minor, milliminutes = milliminutes + excluded.milliminutes;`)

const takenFrom = (kind: string, column: string) => {
  const key = `bench = old.bench and month_kind = '${kind}' and month = old.${column} and currency = old.currency and account = old.account`
  return sql.raw(`
    update book_month set lines = lines - 1, minor = minor - old.minor, milliminutes = milliminutes - round(1000 * old.minutes) where ${key};
    delete from book_month where ${key} and lines = 0;`)
}
