import type { Kysely, Selectable } from 'kysely'
import { entrySchema, type Entry, type LogKind } from '../../bench/logs/entry.ts'
import type { Tables } from './tables.ts'

/** What the store holds went through the same schema on its way in; a row that does not pass was not written by this program. */
export const entryOf = ({
  id,
  log,
  seq,
  at,
  by,
  content: text,
}: Omit<Selectable<Tables['log_entry']>, 'kind'>): Entry => {
  const content = JSON.parse(text) as unknown
  return entrySchema.parse(by === null ? { id, log, seq, at, content } : { id, log, seq, at, by, content })
}

export const readEntries = async (db: Kysely<Tables>, kind: LogKind, log: string): Promise<readonly Entry[]> => {
  const rows = await db
    .selectFrom('log_entry')
    .selectAll()
    .where('kind', '=', kind)
    .where('log', '=', log)
    .orderBy('seq')
    .execute()
  return rows.map(entryOf)
}
