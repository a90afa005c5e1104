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
  // The sums of the books read these indexes alone.
  for (const month of ['month', 'month_from_6th']) {
    await db.schema
      .createIndex(`book_line_${month}`)
      .on('book_line')
      .columns(['bench', month, 'currency', 'account', 'minor', 'minutes'])
      .execute()
  }
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
  await db.schema.createIndex('log_list').on('log').columns(['bench', 'kind', 'open', 'rank']).execute()
  await db.schema
    .createIndex('log_group')
    .on('log')
    .columns(['bench', 'kind', 'open', 'group_name', 'currency', 'count', 'stock_minor'])
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
  for (const name of ['received_minor', 'cost_minor', 'profit_minor', 'minutes'] as const) {
    await db.schema
      .alterTable('machine')
      .addColumn(name, name === 'minutes' ? 'real' : 'integer', (column) => column.notNull().defaultTo(0))
      .execute()
  }
  await db.schema.createIndex('machine_list').on('machine').columns(['bench', 'open', 'rank']).execute()
  await db.schema
    .createIndex('machine_group')
    .on('machine')
    .columns(['bench', 'open', 'group_name', 'currency', 'count', 'stock_minor'])
    .execute()
}
