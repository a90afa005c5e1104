import type { Kysely } from 'kysely'

/** People with names and the devices that are signed in. Written without anything that only one database knows. */
export const addPeopleAndDevices = async (db: Kysely<unknown>): Promise<void> => {
  await db.schema
    .createTable('person')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('role', 'text', (column) => column.notNull())
    .addColumn('passphrase', 'text')
    .addColumn('added_at', 'text', (column) => column.notNull())
    .addColumn('gone_at', 'text')
    .execute()
  await db.schema
    .createTable('device')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('person', 'text', (column) => column.notNull().references('person.id'))
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('token', 'text', (column) => column.notNull())
    .addColumn('next_token', 'text')
    .addColumn('next_at', 'text')
    .addColumn('last_token', 'text')
    .addColumn('last_until', 'text')
    .addColumn('token_at', 'text', (column) => column.notNull())
    .addColumn('signed_in_at', 'text', (column) => column.notNull())
    .addColumn('seen_at', 'text', (column) => column.notNull())
    .addColumn('expires_at', 'text', (column) => column.notNull())
    .addColumn('version', 'integer', (column) => column.notNull())
    .execute()
  for (const name of ['token', 'next_token', 'last_token']) {
    await db.schema.createIndex(`device_${name}`).on('device').column(name).execute()
  }
}
