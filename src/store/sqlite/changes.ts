import { sql, type Kysely } from 'kysely'
import type { BenchId } from '../../bench/contract.ts'
import type { Changes } from '../../bench/ports.ts'
import { makeListeners, mostByName, type Listeners } from '../changes.ts'
import { silent, type Announcer, type LogName } from '../sql/announcer.ts'
import type { Tables } from '../sql/tables.ts'

/** How often it is looked whether another program wrote to the file, while someone listens. */
const lookMs = 500

/** Tells what this program writes log by log, and that another program wrote something. */
export const sqliteChanges = (db: Kysely<Tables>): { readonly changes: Changes; readonly announcer: Announcer } => {
  let timer: NodeJS.Timeout | undefined
  const listeners = makeListeners(
    () => (timer = lookForOthers(db, listeners)),
    () => clearInterval(timer),
  )
  const after = async (logs: readonly LogName[]): Promise<void> => {
    if (!listeners.someone()) return
    if (logs.length > mostByName) return listeners.tellAll()
    for (const { kind, id } of logs) {
      const row = await rowOf(db, { kind, id })
      if (row !== undefined) listeners.tell(row.bench as BenchId, { kind, id, version: row.version })
    }
  }
  return { changes: listeners, announcer: { ...silent, after } }
}

const rowOf = (db: Kysely<Tables>, { kind, id }: LogName) =>
  kind === 'machine'
    ? db.selectFrom('machine').select(['bench', 'version']).where('id', '=', id).executeTakeFirst()
    : db.selectFrom('log').select(['bench', 'version']).where('kind', '=', kind).where('id', '=', id).executeTakeFirst()

/** `data_version` of a connection changes only when another one has written (sqlite.org/pragma.html#pragma_data_version). */
const lookForOthers = (db: Kysely<Tables>, listeners: Listeners): NodeJS.Timeout => {
  let last: number | undefined
  const look = async (): Promise<void> => {
    const { rows } = await sql<{ readonly data_version: number }>`pragma data_version`.execute(db)
    const now = rows[0]?.data_version
    if (last !== undefined && now !== last) listeners.tellAll()
    last = now
  }
  // The file may be closed meanwhile; whoever listened then hears nothing more.
  const tick = (): void => void look().catch(() => undefined)
  tick()
  return setInterval(tick, lookMs).unref()
}
