import type { Transaction } from 'kysely'
import type { Note } from '../../bench/note.ts'
import type { AppendOutcome } from '../../bench/ports.ts'
import type { Tables } from './tables.ts'
import { projectMachineLog } from './project.ts'
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
  const version = await versionOf(db, machine)
  if (version !== null) {
    return (await unknownTo(db, machine, notes)).length === 0 ? { kind: 'appended' } : { kind: 'conflict', version }
  }
  await db.insertInto('machine').values({ id: machine, bench, version: notes.length }).execute()
  await insertNotes(db, notes)
  await projectMachineLog(db, machine)
  return { kind: 'appended' }
}

/** Adds notes to a machine's log, inside a transaction. */
export const appendNotes = async (
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
  await projectMachineLog(db, machine)
  return { kind: 'appended' }
}

/** Number of notes of a machine, or null when it is not there. Nobody else writes to it from then on until the transaction ends. */
const versionOf = async (db: Transaction<Tables>, machine: string): Promise<number | null> => {
  const row = await db
    .selectFrom('machine')
    .select('version')
    .where('id', '=', machine)
    .modifyEnd(wordsOf(db).forUpdate)
    .executeTakeFirst()
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
