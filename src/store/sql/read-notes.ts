import type { Kysely, Selectable } from 'kysely'
import { noteSchema, type Note } from '../../bench/note.ts'
import type { KnownLogs } from './known-logs.ts'
import type { Tables } from './tables.ts'

/** What the store holds went through the same schema on its way in; a row that does not pass was not written by this program. */
export const noteOf = ({ by, content, ...row }: Selectable<Tables['note']>): Note =>
  noteSchema.parse({ ...row, ...(by === null ? {} : { by }), content: JSON.parse(content) as unknown })

/**
 * The log of a machine. Of one that is known only what came since is read, and the last note that is known: a note is never changed,
 * so where that one is still there the others are too. A log with nothing new is given back as the very one that is known.
 */
export const readNotes = async (db: Kysely<Tables>, machine: string, known?: KnownLogs): Promise<readonly Note[]> => {
  const before = known?.get(machine) ?? []
  const last = before.at(-1)
  const [first, ...more] = await rowsFrom(db, machine, last?.seq ?? 1)
  if (first === undefined) return last === undefined ? [] : readNotes(db, machine)
  if (last === undefined) return [first, ...more].map(noteOf)
  if (first.id !== last.id) return readNotes(db, machine)
  return more.length === 0 ? before : [...before, ...more.map(noteOf)]
}

const rowsFrom = (db: Kysely<Tables>, machine: string, seq: number) =>
  db.selectFrom('note').selectAll().where('machine', '=', machine).where('seq', '>=', seq).orderBy('seq').execute()

/** The same, and keeps what was read for the next time. Not within a transaction: what that wrote may be taken back. */
export const readAndKnow = async (db: Kysely<Tables>, machine: string, known: KnownLogs): Promise<readonly Note[]> => {
  const notes = await readNotes(db, machine, known)
  if (notes.length > 0) known.put(machine, notes)
  return notes
}
