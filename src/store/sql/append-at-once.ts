import type { Kysely } from 'kysely'
import type { Projection } from '../../bench/books/book-line.ts'
import type { Note } from '../../bench/note.ts'
import { projectMachine } from '../../bench/projection.ts'
import type { AppendOutcome } from '../../bench/ports.ts'
import { putAddition, type Addition } from './addition.ts'
import type { Announcer } from './announcer.ts'
import { kept, type NotKept } from './kept.ts'
import type { KnownLogs } from './known-logs.ts'
import { noteRow, unknownTo } from './notes.ts'
import { sameLine } from './project.ts'
import { noteOf, readAndKnow } from './read-notes.ts'
import type { Tables } from './tables.ts'

/** It takes more than one note at the end of a log. */
type Beyond = { readonly kind: 'beyond' }
type Means = { readonly announcer: Announcer; readonly known: KnownLogs }

/**
 * Adds a note to a log that is known already, without reading it once more: the row of the machine is written only where it still has the
 * version of that log, and what is once in a log never changes. On PostgreSQL that is one statement.
 * `beyond` where it takes more than that: several notes, or lines of the books that do not simply come last.
 */
export const appendAtOnce = async (
  db: Kysely<Tables>,
  means: Means,
  machine: string,
  expectedVersion: number,
  notes: readonly Note[],
): Promise<AppendOutcome | NotKept | Beyond> => {
  const outcome = await kept(db, () => tryToAppend(db, means, machine, expectedVersion, notes))
  if (outcome.kind === 'appended') await means.announcer.after([{ kind: 'machine', id: machine }])
  return outcome
}

const tryToAppend = async (
  db: Kysely<Tables>,
  { announcer, known }: Means,
  machine: string,
  expectedVersion: number,
  notes: readonly Note[],
): Promise<AppendOutcome | Beyond> => {
  const before = known.get(machine)
  const held = before?.length === expectedVersion ? before : await readAndKnow(db, machine, known)
  const early = settledBy(held, expectedVersion, notes)
  if (early !== null) return early
  const addition = held.length === expectedVersion ? additionOf(db, held, notes) : null
  if (addition === null) return { kind: 'beyond' }
  if (await putAddition(db, announcer, addition)) {
    known.put(machine, addition.after)
    return { kind: 'appended' }
  }
  return settledBy(await readAndKnow(db, machine, known), expectedVersion, notes) ?? { kind: 'beyond' }
}

/** What a log says of such an append without any writing; null when it has to be tried. Logs only grow, so it holds later too. */
const settledBy = (held: readonly Note[], expectedVersion: number, notes: readonly Note[]): AppendOutcome | null => {
  if (held.length === 0) return null
  if (unknownTo(held, notes).length === 0) return { kind: 'appended' }
  return held.length > expectedVersion ? { kind: 'conflict', version: held.length } : null
}

/** What follows from a log that was added to is at hand when it is added to again. */
const projections = new WeakMap<readonly Note[], Projection | null>()

const projectionOf = (notes: readonly Note[]): Projection | null => {
  const there = projections.get(notes)
  if (there !== undefined) return there
  const made = projectMachine(notes)
  projections.set(notes, made)
  return made
}

const additionOf = (db: Kysely<Tables>, held: readonly Note[], notes: readonly Note[]): Addition | null => {
  const [note, ...others] = unknownTo(held, notes)
  const last = held.at(-1)
  if (note === undefined || last === undefined || others.length > 0) return null
  const row = noteRow(db, note)
  const all = [...held, noteOf(row)]
  const [before, after] = [projectionOf(held), projectionOf(all)]
  if (before === null || after === null || before.currency !== after.currency) return null
  if (!before.lines.every((line, i) => sameLine(line, after.lines[i]))) return null
  const lines = after.lines.slice(before.lines.length)
  return { machine: last.machine, version: held.length, after: all, row, projection: after, lines }
}
