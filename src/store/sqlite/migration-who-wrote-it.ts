import { sql, type Kysely } from 'kysely'

/** Who wrote a note, where people have names. What lists need of a machine knows of parts that are out, so it is made anew. */
export const addWhoWroteIt = async (db: Kysely<unknown>): Promise<void> => {
  for (const table of ['note', 'log_entry']) await db.schema.alterTable(table).addColumn('by', 'text').execute()
  await sql`update machine set summary = null`.execute(db)
}
