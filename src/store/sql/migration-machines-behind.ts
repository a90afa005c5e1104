import { sql, type Kysely } from 'kysely'

/** Leads every start to the machines of which lists have nothing yet: there are hardly ever any, and looking for them in a large bench takes long. */
export const addMachinesBehind = async (db: Kysely<unknown>): Promise<void> => {
  await sql`create index machine_behind on machine (rank) where summary is null`.execute(db)
}
