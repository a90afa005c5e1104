import type { Kysely } from 'kysely'
import { personOf } from '../sql/people-store.ts'
import type { Tables } from '../sql/tables.ts'
import { keptRecordSchema, type KeptRecord } from './records.ts'
import { stretches } from './stretches.ts'

/**
 * Everything a store holds, each kind in the order in which it came in. What is made from the logs for lists and books is not among it.
 * Hand it a transaction that reads one state of the store (`inOneReading`). Throws on a row that this program did not write; verifying
 * says which.
 */
export async function* readEverything(db: Kysely<Tables>): AsyncGenerator<KeptRecord> {
  for (const read of Object.values(readKind)) yield* read(db)
}

const json = (text: string): unknown => JSON.parse(text) as unknown

async function* readPeople(db: Kysely<Tables>): AsyncGenerator<KeptRecord> {
  const rows = await db.selectFrom('person').selectAll().orderBy('added_at').orderBy('id').execute()
  for (const row of rows) yield { kind: 'person', person: personOf(row) }
}

async function* readBlueprints(db: Kysely<Tables>): AsyncGenerator<KeptRecord> {
  const rows = await db.selectFrom('own_blueprint').select('content').orderBy('rank').execute()
  for (const { content } of rows) yield keptRecordSchema.parse({ kind: 'blueprint', own: json(content) })
}

async function* readSettings(db: Kysely<Tables>): AsyncGenerator<KeptRecord> {
  const rows = await db.selectFrom('settings_change').select(['at', 'content']).orderBy('rank').execute()
  for (const { at, content } of rows) {
    yield keptRecordSchema.parse({ kind: 'settings', change: { at, change: json(content) } })
  }
}

async function* readMachines(db: Kysely<Tables>): AsyncGenerator<KeptRecord> {
  for await (const machines of stretches((after, limit) => machinesAfter(db, after, limit))) {
    const ids = machines.map(({ id }) => id)
    const rows = await db.selectFrom('note').selectAll().where('machine', 'in', ids).orderBy('seq').execute()
    const notes = grouped(rows, ({ machine }) => machine)
    for (const { id, bench } of machines) {
      yield keptRecordSchema.parse({ kind: 'machine', bench, id, notes: (notes.get(id) ?? []).map(entryOf) })
    }
  }
}

async function* readLogs(db: Kysely<Tables>): AsyncGenerator<KeptRecord> {
  for await (const logs of stretches((after, limit) => logsAfter(db, after, limit))) {
    const ids = logs.map(({ id }) => id)
    const rows = await db.selectFrom('log_entry').selectAll().where('log', 'in', ids).orderBy('seq').execute()
    const entries = grouped(rows, ({ kind, log }) => `${kind} ${log}`)
    for (const { kind, id, bench } of logs) {
      const own = (entries.get(`${kind} ${id}`) ?? []).map(({ kind: _kind, ...entry }) => entryOf(entry))
      yield keptRecordSchema.parse({ kind: 'log', bench, logKind: kind, id, entries: own })
    }
  }
}

const machinesAfter = (db: Kysely<Tables>, after: number, limit: number) =>
  db
    .selectFrom('machine')
    .select(['rank', 'id', 'bench'])
    .where('rank', '>', after)
    .orderBy('rank')
    .limit(limit)
    .execute()

const logsAfter = (db: Kysely<Tables>, after: number, limit: number) =>
  db
    .selectFrom('log')
    .select(['rank', 'kind', 'id', 'bench'])
    .where('rank', '>', after)
    .orderBy('rank')
    .limit(limit)
    .execute()

const grouped = <Row>(rows: readonly Row[], keyOf: (row: Row) => string): ReadonlyMap<string, readonly Row[]> => {
  const groups = new Map<string, Row[]>()
  for (const row of rows) {
    const group = groups.get(keyOf(row))
    if (group === undefined) groups.set(keyOf(row), [row])
    else group.push(row)
  }
  return groups
}

/** A row as an entry of its log, still to be parsed. */
const entryOf = ({ by, content, ...row }: { readonly by: string | null; readonly content: string }): unknown => ({
  ...row,
  ...(by === null ? {} : { by }),
  content: json(content),
})

/** What a store holds, one kind at a time; in this order, for what comes later may lean on what comes before. */
export const readKind: Readonly<Record<KeptRecord['kind'], (db: Kysely<Tables>) => AsyncGenerator<KeptRecord>>> = {
  person: readPeople,
  blueprint: readBlueprints,
  settings: readSettings,
  machine: readMachines,
  log: readLogs,
}
