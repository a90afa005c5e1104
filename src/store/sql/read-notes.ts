import type { Kysely, Selectable } from 'kysely'
import { noteSchema, type Note } from '../../bench/note.ts'
import type { Tables } from './tables.ts'

/** What the store holds went through the same schema on its way in; a row that does not pass was not written by this program. */
export const noteOf = ({ by, content, ...row }: Selectable<Tables['note']>): Note =>
  noteSchema.parse({ ...row, ...(by === null ? {} : { by }), content: JSON.parse(content) as unknown })

export const readNotes = async (db: Kysely<Tables>, machine: string): Promise<readonly Note[]> => {
  const rows = await db.selectFrom('note').selectAll().where('machine', '=', machine).orderBy('seq').execute()
  return rows.map(noteOf)
}
