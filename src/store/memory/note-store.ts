import type { Note } from '../../bench/note.ts'
import type { AppendOutcome, NoteStore } from '../../bench/ports.ts'

type Log = { readonly bench: string; readonly notes: readonly Note[] }

/** The port of notes in memory: forgotten when the program ends. For the demonstration and for tests. */
export const memoryNoteStore = (): NoteStore => {
  const logs = new Map<string, Log>()
  return {
    list: (bench) => Promise.resolve([...logs.values()].filter((log) => log.bench === bench).map((log) => log.notes)),
    notes: (machine) => Promise.resolve(logs.get(machine)?.notes ?? []),
    add: (bench, machine, notes) => Promise.resolve(startLog(logs, bench, machine, notes)),
    append: (machine, expectedVersion, notes) => Promise.resolve(appendNotes(logs, machine, expectedVersion, notes)),
  }
}

const startLog = (logs: Map<string, Log>, bench: string, machine: string, notes: readonly Note[]): AppendOutcome => {
  const log = logs.get(machine)
  if (log !== undefined) return unknownTo(log, notes).length === 0 ? appended : conflict(log)
  logs.set(machine, { bench, notes: [...notes] })
  return appended
}

const appendNotes = (
  logs: Map<string, Log>,
  machine: string,
  expectedVersion: number,
  notes: readonly Note[],
): AppendOutcome => {
  const log = logs.get(machine)
  if (log === undefined) return { kind: 'missing' }
  const fresh = unknownTo(log, notes)
  if (fresh.length === 0) return appended
  if (log.notes.length !== expectedVersion) return conflict(log)
  logs.set(machine, { ...log, notes: [...log.notes, ...fresh] })
  return appended
}

const appended: AppendOutcome = { kind: 'appended' }

const conflict = (log: Log): AppendOutcome => ({ kind: 'conflict', version: log.notes.length })

const unknownTo = (log: Log, notes: readonly Note[]): readonly Note[] => {
  const held = new Set(log.notes.map((note) => note.id))
  return notes.filter((note) => !held.has(note.id))
}
