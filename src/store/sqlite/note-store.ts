import type { Kysely, Transaction } from 'kysely'
import { noteSchema, type Note } from '../../bench/note.ts'
import type { AppendOutcome, NoteStore } from '../../bench/ports.ts'
import type { Tables } from './database.ts'
import { kept } from './kept.ts'

/** Values in one insert, well under SQLite's limit of 32,766 bound values. */
const rowsAtOnce = 500

/** The port of notes on SQLite. */
export const sqliteNoteStore = (db: Kysely<Tables>): NoteStore => ({
  list: (bench) => listLogs(db, bench),
  notes: (machine) => readNotes(db, machine),
  add: (bench, machine, notes) =>
    kept(() => db.transaction().execute((transaction) => startLog(transaction, bench, machine, notes))),
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

const readNotes = async (db: Kysely<Tables>, machine: string): Promise<readonly Note[]> => {
  const rows = await db.selectFrom('note').selectAll().where('machine', '=', machine).orderBy('seq').execute()
  return rows.map(noteOf)
}

/** What the store holds went through the same schema on its way in; a row that does not pass was not written by this program. */
const noteOf = (row: Tables['note']): Note => noteSchema.parse({ ...row, content: JSON.parse(row.content) as unknown })

const startLog = async (
  db: Transaction<Tables>,
  bench: string,
  machine: string,
  notes: readonly Note[],
): Promise<AppendOutcome> => {
  const version = await versionOf(db, machine)
  if (version !== null) {
    return (await unknownTo(db, machine, notes)).length === 0 ? { kind: 'appended' } : { kind: 'conflict', version }
  }
  await db.insertInto('machine').values({ id: machine, bench, version: notes.length }).execute()
  await insertNotes(db, notes)
  return { kind: 'appended' }
}

const appendNotes = async (
  db: Transaction<Tables>,
  machine: string,
  expectedVersion: number,
  notes: readonly Note[],
): Promise<AppendOutcome> => {
  const version = await versionOf(db, machine)
  if (version === null) return { kind: 'missing' }
  const fresh = await unknownTo(db, machine, notes)
  if (fresh.length === 0) return { kind: 'appended' }
  if (version !== expectedVersion) return { kind: 'conflict', version }
  await insertNotes(db, fresh)
  await db
    .updateTable('machine')
    .set({ version: version + fresh.length })
    .where('id', '=', machine)
    .execute()
  return { kind: 'appended' }
}

/** Number of notes of a machine, or null when it is not there. */
const versionOf = async (db: Transaction<Tables>, machine: string): Promise<number | null> => {
  const row = await db.selectFrom('machine').select('version').where('id', '=', machine).executeTakeFirst()
  return row?.version ?? null
}

/** Those of the notes that the machine does not hold yet. */
const unknownTo = async (
  db: Transaction<Tables>,
  machine: string,
  notes: readonly Note[],
): Promise<readonly Note[]> => {
  const rows = await db.selectFrom('note').select('id').where('machine', '=', machine).execute()
  const held = new Set(rows.map((row) => row.id))
  return notes.filter((note) => !held.has(note.id))
}

const insertNotes = async (db: Transaction<Tables>, notes: readonly Note[]): Promise<void> => {
  for (let from = 0; from < notes.length; from += rowsAtOnce) {
    const rows = notes
      .slice(from, from + rowsAtOnce)
      .map((note) => ({ ...note, content: JSON.stringify(note.content) }))
    await db.insertInto('note').values(rows).execute()
  }
}
