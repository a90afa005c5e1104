import type { BenchId } from '../../bench/contract.ts'
import type { Entry, LogKind } from '../../bench/logs/entry.ts'
import type { Note } from '../../bench/note.ts'
import type { AppendOutcome } from '../../bench/ports.ts'

type Kept<Item> = { readonly bench: BenchId; readonly entries: readonly Item[] }

/** Everything that a store in memory holds. `others` by kind, then by id. */
export type MemoryLogs = {
  readonly machines: Map<string, Kept<Note>>
  readonly others: Map<LogKind, Map<string, Kept<Entry>>>
}

export const memoryLogs = (): MemoryLogs => ({ machines: new Map(), others: new Map() })

export const othersOf = (logs: MemoryLogs, kind: LogKind): Map<string, Kept<Entry>> => {
  const known = logs.others.get(kind)
  if (known !== undefined) return known
  const made = new Map<string, Kept<Entry>>()
  logs.others.set(kind, made)
  return made
}

type Identified = { readonly id: string }

/** Begins a log; one that is there already is kept when it holds all of these. */
export const startLog = <Item extends Identified>(
  logs: Map<string, Kept<Item>>,
  bench: BenchId,
  id: string,
  entries: readonly Item[],
): AppendOutcome => {
  const log = logs.get(id)
  if (log !== undefined) {
    return unknownTo(log, entries).length === 0
      ? { kind: 'appended' }
      : { kind: 'conflict', version: log.entries.length }
  }
  logs.set(id, { bench, entries: [...entries] })
  return { kind: 'appended' }
}

/** Adds to a log whose version is still the expected one. */
export const appendTo = <Item extends Identified>(
  logs: Map<string, Kept<Item>>,
  id: string,
  expectedVersion: number,
  entries: readonly Item[],
): AppendOutcome => {
  const log = logs.get(id)
  if (log === undefined) return { kind: 'missing' }
  const fresh = unknownTo(log, entries)
  if (fresh.length === 0) return { kind: 'appended' }
  if (log.entries.length !== expectedVersion) return { kind: 'conflict', version: log.entries.length }
  logs.set(id, { ...log, entries: [...log.entries, ...fresh] })
  return { kind: 'appended' }
}

const unknownTo = <Item extends Identified>(log: Kept<Item>, entries: readonly Item[]): readonly Item[] => {
  const held = new Set(log.entries.map(({ id }) => id))
  return entries.filter(({ id }) => !held.has(id))
}
