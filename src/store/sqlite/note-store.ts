import type { Kysely } from 'kysely'
import type { Note } from '../../bench/note.ts'
import type { NoteStore } from '../../bench/ports.ts'
import type { Tables } from './database.ts'
import { kept } from './kept.ts'
import { appendNotes, startMachine } from './notes.ts'
import { noteOf, readNotes } from './read-notes.ts'

/** The port of notes on SQLite. */
export const sqliteNoteStore = (db: Kysely<Tables>): NoteStore => ({
  list: (bench) => listLogs(db, bench),
  notes: (machine) => readNotes(db, machine),
  add: (bench, machine, notes) =>
    kept(() => db.transaction().execute((transaction) => startMachine(transaction, bench, machine, notes))),
  append: (machine, expectedVersion, notes) =>
    kept(() => db.transaction().execute((transaction) => appendNotes(transaction, machine, expectedVersion, notes))),
})

const listLogs = async (db: Kysely<Tables>, bench: string): Promise<readonly (readonly Note[])[]> => {
  const rows = await db
    .selectFrom('note')
    .innerJoin('machine', 'machine.id', 'note.machine')
    .where('machine.bench', '=', bench)
    .select(['note.machine', 'note.id', 'note.seq', 'note.at', 'note.content'])
    .orderBy('machine.rank')
    .orderBy('note.seq')
    .execute()
  const logs = new Map<string, Note[]>()
  for (const row of rows) {
    const log = logs.get(row.machine)
    if (log === undefined) logs.set(row.machine, [noteOf(row)])
    else log.push(noteOf(row))
  }
  return [...logs.values()]
}
