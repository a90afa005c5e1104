import type { Transaction } from 'kysely'
import type { Entry, LogKind } from '../../bench/logs/entry.ts'
import type { AppendOutcome } from '../../bench/ports.ts'
import type { Tables } from './tables.ts'
import { projectOtherLog } from './project.ts'
import { readEntries } from './read-entries.ts'
import { wordsOf } from './words.ts'

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
    .select('version')
    .where('kind', '=', kind)
    .where('id', '=', id)
    .modifyEnd(wordsOf(db).forUpdate)
    .executeTakeFirst()
  if (row === undefined && expectedVersion > 0) return { kind: 'missing' }
  const held = new Set((await readEntries(db, kind, id)).map((entry) => entry.id))
  const fresh = entries.filter((entry) => !held.has(entry.id))
  if (fresh.length === 0) return { kind: 'appended' }
  const version = row?.version ?? 0
  if (version !== expectedVersion) return { kind: 'conflict', version }
  await putLog(db, bench, kind, id, version + fresh.length)
  await db
    .insertInto('log_entry')
    .values(fresh.map(({ content, ...entry }) => ({ ...entry, kind, content: JSON.stringify(content) })))
    .execute()
  await projectOtherLog(db, kind, id)
  return { kind: 'appended' }
}

const putLog = async (
  db: Transaction<Tables>,
  bench: string,
  kind: LogKind,
  id: string,
  version: number,
): Promise<void> => {
  await db
    .insertInto('log')
    .values({ kind, id, bench, version })
    .onConflict((conflict) => conflict.columns(['kind', 'id']).doUpdateSet({ version }))
    .execute()
}
