import { sql, type Kysely, type Selectable } from 'kysely'
import { noteSchema, type Note } from '../../bench/note.ts'
import type { KnownLogs } from './known-logs.ts'
import { question } from './question.ts'
import type { Tables } from './tables.ts'

/** What the store holds went through the same schema on its way in; a row that does not pass was not written by this program. */
export const noteOf = ({ id, machine, seq, at, by, content: text }: NoteRow): Note => {
  // Written out one by one: parsing what a spread has made takes twice as long.
  const content = JSON.parse(text) as unknown
  return noteSchema.parse(by === null ? { id, machine, seq, at, content } : { id, machine, seq, at, by, content })
}

type NoteRow = Selectable<Tables['note']>

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

const rowsFrom = (db: Kysely<Tables>, machine: string, seq: number) => noteQuestion(db, { machine, seq })

const noteQuestion = question<{ readonly machine: string; readonly seq: number }, NoteRow>(
  (put) => sql`
  select machine, id, seq, at, "by", content from note
  where machine = ${put('machine')} and seq >= ${put('seq')} order by seq`,
)

/** The same, and keeps what was read for the next time. Not within a transaction: what that wrote may be taken back. */
export const readAndKnow = async (db: Kysely<Tables>, machine: string, known: KnownLogs): Promise<readonly Note[]> => {
  const notes = await readNotes(db, machine, known)
  if (notes.length > 0) known.put(machine, notes)
  return notes
}
