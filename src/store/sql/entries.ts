import type { Kysely, Selectable, Transaction } from 'kysely'
import type { Entry, LogKind } from '../../bench/logs/entry.ts'
import type { AppendOutcome } from '../../bench/ports.ts'
import { projectLog } from '../../bench/projection.ts'
import type { Tables } from './tables.ts'
import { columnsOf, insertLines, putLines } from './project.ts'
import { entryOf, readEntries } from './read-entries.ts'
import { wordsOf } from './words.ts'

/** Values in one insert, well under SQLite's limit of 32,766 bound values. */
const rowsAtOnce = 500

/** Begins a log where `expectedVersion` is 0, else adds to it; inside a transaction. */
export const writeEntries = async (
  db: Transaction<Tables>,
  bench: string,
  {
    kind,
    id,
    expectedVersion,
    entries,
  }: { kind: LogKind; id: string; expectedVersion: number; entries: readonly Entry[] },
): Promise<AppendOutcome> => {
  const row = await db
    .selectFrom('log')
    .select(['version', 'bench'])
    .where('kind', '=', kind)
    .where('id', '=', id)
    .modifyEnd(wordsOf(db).forUpdate)
    .executeTakeFirst()
  if (row === undefined && expectedVersion > 0) return { kind: 'missing' }
  const held = row === undefined ? [] : await readEntries(db, kind, id)
  const ids = new Set(held.map((entry) => entry.id))
  const fresh = entries.filter((entry) => !ids.has(entry.id)).map((entry) => entryRow(db, kind, entry))
  if (fresh.length === 0) return { kind: 'appended' }
  const version = row?.version ?? 0
  if (version !== expectedVersion) return { kind: 'conflict', version }
  const projection = projectLog(kind, [...held, ...fresh.map(({ kind: _kind, ...entry }) => entryOf(entry))])
  const columns = { version: version + fresh.length, ...columnsOf(projection) }
  await db
    .insertInto('log')
    .values({ kind, id, bench, ...columns })
    .onConflict((conflict) => conflict.columns(['kind', 'id']).doUpdateSet(columns))
    .execute()
  for (let from = 0; from < fresh.length; from += rowsAtOnce) {
    await db
      .insertInto('log_entry')
      .values(fresh.slice(from, from + rowsAtOnce))
      .execute()
  }
  const log = { kind, log: id, bench: row?.bench ?? bench, currency: projection.currency }
  await (row === undefined ? insertLines : putLines)(db, log, projection.lines)
  return { kind: 'appended' }
}

/** An entry as the database keeps it. */
const entryRow = (db: Kysely<Tables>, kind: LogKind, entry: Entry): Selectable<Tables['log_entry']> => {
  const { asKept } = wordsOf(db)
  const { id, log, seq, at, by, content } = entry
  return {
    kind,
    log: asKept(log),
    id: asKept(id),
    seq,
    at,
    by: by === undefined ? null : asKept(by),
    content: JSON.stringify(content),
  }
}
