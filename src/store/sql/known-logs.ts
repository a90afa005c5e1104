import type { Note } from '../../bench/note.ts'

/** Logs of machines as they were read last. Never the whole truth, for another program may have added to them since. */
export type KnownLogs = {
  readonly get: (machine: string) => readonly Note[] | undefined
  readonly put: (machine: string, notes: readonly Note[]) => void
}

/** Notes that are kept in all: some tens of megabytes at the most. */
const mostNotes = 20_000

/** Keeps those that were asked for last. */
export const makeKnownLogs = (most = mostNotes): KnownLogs => {
  const logs = new Map<string, readonly Note[]>()
  let count = 0
  const drop = (machine: string): void => {
    count -= logs.get(machine)?.length ?? 0
    logs.delete(machine)
  }
  return {
    get: (machine) => {
      const notes = logs.get(machine)
      if (notes === undefined) return undefined
      // A map gives its keys in the order they were put in, so the one that was not asked for longest stands first.
      logs.delete(machine)
      logs.set(machine, notes)
      return notes
    },
    put: (machine, notes) => {
      drop(machine)
      logs.set(machine, notes)
      count += notes.length
      for (const oldest of logs.keys()) {
        if (count <= most) return
        drop(oldest)
      }
    },
  }
}
