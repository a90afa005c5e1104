import type { Kysely, Transaction } from 'kysely'
import type { Entry } from '../../bench/logs/entry.ts'
import type { AppendOutcome, LogStore, LogWrite, WriteOutcome } from '../../bench/ports.ts'
import { silent, type Announcer } from './announcer.ts'
import { writeEntries } from './entries.ts'
import type { KnownLogs } from './known-logs.ts'
import { appendNotes, startMachine } from './notes.ts'
import { entryOf, readEntries } from './read-entries.ts'
import type { Tables } from './tables.ts'
import { writeAndTell } from './write-and-tell.ts'

/** The port of the other logs. `known`: logs of machines that were read before. */
export const sqlLogStore = (db: Kysely<Tables>, announcer: Announcer = silent, known?: KnownLogs): LogStore => ({
  entries: (kind, id) => readEntries(db, kind, id),
  list: (bench, kind) => listLogs(db, bench, kind),
  write: (bench, writes) => writeAll(db, { announcer, known }, bench, writes),
})

const listLogs = async (db: Kysely<Tables>, bench: string, kind: string): Promise<readonly (readonly Entry[])[]> => {
  const rows = await db
    .selectFrom('log_entry')
    .innerJoin('log', (join) => join.onRef('log.id', '=', 'log_entry.log').onRef('log.kind', '=', 'log_entry.kind'))
    .where('log.bench', '=', bench)
    .where('log.kind', '=', kind)
    .select(['log_entry.log', 'log_entry.id', 'log_entry.seq', 'log_entry.at', 'log_entry.by', 'log_entry.content'])
    .orderBy('log.rank')
    .orderBy('log_entry.seq')
    .execute()
  const logs = new Map<string, Entry[]>()
  for (const row of rows) {
    const log = logs.get(row.log)
    if (log === undefined) logs.set(row.log, [entryOf(row)])
    else log.push(entryOf(row))
  }
  return [...logs.values()]
}

/** Thrown inside the transaction, so that what was written before it is taken back. */
class Unwritten extends Error {
  readonly outcome: WriteOutcome
  constructor(outcome: WriteOutcome) {
    super('one of the logs could not be written')
    this.outcome = outcome
  }
}

const writeAll = async (
  db: Kysely<Tables>,
  { announcer, known }: { readonly announcer: Announcer; readonly known: KnownLogs | undefined },
  bench: string,
  writes: readonly LogWrite[],
): Promise<WriteOutcome> => {
  try {
    return await writeAndTell(db, announcer, writes, async (transaction) => {
      for (const [at, write] of writes.entries()) {
        const outcome = await writeOne(transaction, bench, write, known)
        if (outcome.kind !== 'appended') throw new Unwritten(placed(outcome, at))
      }
      return { kind: 'appended' as const }
    })
  } catch (fault) {
    if (fault instanceof Unwritten) return fault.outcome
    throw fault
  }
}

const placed = (outcome: Exclude<AppendOutcome, { kind: 'appended' }>, at: number): WriteOutcome =>
  outcome.kind === 'not-kept' ? outcome : { ...outcome, at }

const writeOne = (
  db: Transaction<Tables>,
  bench: string,
  write: LogWrite,
  known: KnownLogs | undefined,
): Promise<AppendOutcome> => {
  if (write.kind !== 'machine') return writeEntries(db, bench, write)
  return write.expectedVersion === 0
    ? startMachine(db, bench, write.id, write.entries)
    : appendNotes(db, write.id, write.expectedVersion, write.entries, known)
}
