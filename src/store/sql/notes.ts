import type { Kysely, Selectable, Transaction } from 'kysely'
import type { Note } from '../../bench/note.ts'
import { projectMachine } from '../../bench/projection.ts'
import type { AppendOutcome } from '../../bench/ports.ts'
import type { KnownLogs } from './known-logs.ts'
import type { Tables } from './tables.ts'
import { insertLines, machineColumns, putLines } from './project.ts'
import { noteOf, readNotes } from './read-notes.ts'
import { wordsOf } from './words.ts'

/** Values in one insert, well under SQLite's limit of 32,766 bound values. */
const rowsAtOnce = 500

/** Begins a machine's log, inside a transaction. */
export const startMachine = async (
  db: Transaction<Tables>,
  bench: string,
  machine: string,
  notes: readonly Note[],
): Promise<AppendOutcome> => {
  const row = await machineRow(db, machine)
  if (row !== undefined) {
    const { version } = row
    const isHeld = unknownTo(await readNotes(db, machine), notes).length === 0
    return isHeld ? { kind: 'appended' } : { kind: 'conflict', version }
  }
  const rows = notes.map((note) => noteRow(db, note))
  const projection = projectMachine(rows.map(noteOf))
  await db
    .insertInto('machine')
    .values({ id: machine, bench, version: notes.length, ...machineColumns(projection) })
    .execute()
  await insertNotes(db, rows)
  if (projection !== null) {
    await insertLines(db, { kind: 'machine', log: machine, bench, currency: projection.currency }, projection.lines)
  }
  return { kind: 'appended' }
}

/** Adds notes to a machine's log, inside a transaction. */
export const appendNotes = async (
  db: Transaction<Tables>,
  machine: string,
  expectedVersion: number,
  notes: readonly Note[],
  known?: KnownLogs,
): Promise<AppendOutcome> => {
  const row = await machineRow(db, machine)
  if (row === undefined) return { kind: 'missing' }
  const held = await readNotes(db, machine, known)
  const fresh = unknownTo(held, notes)
  if (fresh.length === 0) return { kind: 'appended' }
  const { version, bench } = row
  if (version !== expectedVersion) return { kind: 'conflict', version }
  const rows = fresh.map((note) => noteRow(db, note))
  const projection = projectMachine([...held, ...rows.map(noteOf)])
  await insertNotes(db, rows)
  await db
    .updateTable('machine')
    .set({ version: version + fresh.length, ...machineColumns(projection) })
    .where('id', '=', machine)
    .execute()
  if (projection !== null) {
    await putLines(db, { kind: 'machine', log: machine, bench, currency: projection.currency }, projection.lines)
  }
  return { kind: 'appended' }
}

/** The row of a machine. Nobody else writes to it from then on until the transaction ends. */
const machineRow = (db: Transaction<Tables>, machine: string) =>
  db
    .selectFrom('machine')
    .select(['version', 'bench'])
    .where('id', '=', machine)
    .modifyEnd(wordsOf(db).forUpdate)
    .executeTakeFirst()

/** Those of the notes that the machine does not hold yet. */
export const unknownTo = (held: readonly Note[], notes: readonly Note[]): readonly Note[] => {
  const ids = new Set(held.map(({ id }) => id))
  return notes.filter(({ id }) => !ids.has(id))
}

export type NoteRow = Selectable<Tables['note']>

/** A note as the database keeps it. */
export const noteRow = (db: Kysely<Tables>, note: Note): NoteRow => {
  const { asKept } = wordsOf(db)
  const { id, machine, seq, at, by, content } = note
  return {
    machine: asKept(machine),
    id: asKept(id),
    seq,
    at,
    by: by === undefined ? null : asKept(by),
    content: JSON.stringify(content),
  }
}

const insertNotes = async (db: Transaction<Tables>, rows: readonly NoteRow[]): Promise<void> => {
  for (let from = 0; from < rows.length; from += rowsAtOnce) {
    await db
      .insertInto('note')
      .values(rows.slice(from, from + rowsAtOnce))
      .execute()
  }
}
