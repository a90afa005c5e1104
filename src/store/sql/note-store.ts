import type { Kysely } from 'kysely'
import type { Note } from '../../bench/note.ts'
import type { NoteStore } from '../../bench/ports.ts'
import { silent, type Announcer } from './announcer.ts'
import { appendAtOnce } from './append-at-once.ts'
import { inTurn } from './in-turn.ts'
import { makeKnownLogs, type KnownLogs } from './known-logs.ts'
import { appendNotes, startMachine } from './notes.ts'
import { noteOf, readAndKnow } from './read-notes.ts'
import type { Tables } from './tables.ts'
import { writeAndTell } from './write-and-tell.ts'

/** The port of notes. `known`: logs that were read before. */
export const sqlNoteStore = (
  db: Kysely<Tables>,
  announcer: Announcer = silent,
  known: KnownLogs = makeKnownLogs(),
): NoteStore => ({
  list: (bench) => listLogs(db, bench),
  notes: inTurn((machine) => readAndKnow(db, machine, known)),
  atHand: (machine, version) => {
    const notes = known.get(machine)
    return notes?.length === version ? notes : null
  },
  add: (bench, machine, notes) =>
    writeAndTell(db, announcer, [{ kind: 'machine', id: machine }], (transaction) =>
      startMachine(transaction, bench, machine, notes),
    ),
  append: async (machine, expectedVersion, notes) => {
    const outcome = await appendAtOnce(db, { announcer, known }, machine, expectedVersion, notes)
    if (outcome.kind !== 'beyond') return outcome
    return writeAndTell(db, announcer, [{ kind: 'machine', id: machine }], (transaction) =>
      appendNotes(transaction, machine, expectedVersion, notes, known),
    )
  },
})

const listLogs = async (db: Kysely<Tables>, bench: string): Promise<readonly (readonly Note[])[]> => {
  const rows = await db
    .selectFrom('note')
    .innerJoin('machine', 'machine.id', 'note.machine')
    .where('machine.bench', '=', bench)
    .select(['note.machine', 'note.id', 'note.seq', 'note.at', 'note.by', 'note.content'])
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
