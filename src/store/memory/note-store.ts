import type { NoteStore } from '../../bench/ports.ts'
import { appendTo, memoryLogs, startLog, type MemoryLogs } from './logs.ts'

/** The port of notes in memory: forgotten when the program ends. For the demonstration and for tests. */
export const memoryNoteStore = (logs: MemoryLogs = memoryLogs()): NoteStore => ({
  list: (bench) =>
    Promise.resolve([...logs.machines.values()].filter((log) => log.bench === bench).map(({ entries }) => entries)),
  notes: (machine) => Promise.resolve(logs.machines.get(machine)?.entries ?? []),
  add: (bench, machine, notes) => Promise.resolve(startLog(logs.machines, bench, machine, notes)),
  append: (machine, expectedVersion, notes) =>
    Promise.resolve(appendTo(logs.machines, machine, expectedVersion, notes)),
})
