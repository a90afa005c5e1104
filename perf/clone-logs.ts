import { sql, type Kysely, type RawBuilder } from 'kysely'
import type { Tables } from '../src/store/sql/tables.ts'
import { isPostgres } from '../src/store/sql/words.ts'

/** The logs written first: their ids are a letter and seven digits, counted from 0, and `step` of them are one set. */
type Set = { readonly kind: 'machine' | 'part' | 'expense'; readonly step: number }

/** Copies whole sets of logs so many times inside the database, with all that is kept beside them, under ids of their own. */
export const cloneLogs = async (db: Kysely<Tables>, sets: readonly Set[], times: number): Promise<void> => {
  const hasTrigger = isPostgres(db)
  if (hasTrigger) await sql`alter table book_line disable trigger user`.execute(db)
  for (const { kind, step } of sets) {
    const [logs, entries, log] = kind === 'machine' ? ['machine', 'note', 'machine'] as const : ['log', 'log_entry', 'log'] as const // prettier-ignore
    const ofKind = kind === 'machine' ? sql`1 = 1` : sql`kind = ${kind}`
    await cloneRows(db, logs, { owner: 'id', ids: ['id'], json: 'summary', where: ofKind }, step, times)
    await cloneRows(db, entries, { owner: log, ids: [log, 'id'], json: 'content', where: ofKind }, step, times)
    await cloneRows(db, 'book_line', { owner: 'log', ids: ['log', 'note'], json: '', where: sql`kind = ${kind}` }, step, times) // prettier-ignore
  }
  if (!hasTrigger) return
  await sql`alter table book_line enable trigger user`.execute(db)
  await sql`delete from book_month`.execute(db)
  for (const [kind, month] of [
    ['calendar', 'month'],
    ['from-6th', 'month_from_6th'],
  ] as const)
    // prettier-ignore
    await sql`
      insert into book_month (bench, month_kind, month, currency, account, lines, minor, milliminutes)
      select bench, ${kind}::text, ${sql.ref(month)}, currency, account, count(*), sum(minor), sum(round(1000 * minutes::numeric)::bigint)
      from book_line group by bench, ${sql.ref(month)}, currency, account`.execute(db)
}

type Copied = {
  readonly owner: string
  readonly ids: readonly string[]
  /** The column in whose texts ids stand too; empty for none. */
  readonly json: string
  readonly where: RawBuilder<unknown>
}

const cloneRows = async (
  db: Kysely<Tables>,
  table: string,
  { owner, ids, json, where }: Copied,
  step: number,
  times: number,
): Promise<void> => {
  const found = (await db.introspection.getTables()).find(({ name }) => name === table)
  // These two the database gives out itself.
  const columns = (found?.columns ?? []).map(({ name }) => name).filter((name) => name !== 'rank' && name !== 'rowid')
  const next = sql`cast(substr(${sql.ref(owner)}, 2, 7) as integer) + k * ${sql.lit(step)}`
  const padded = isPostgres(db) ? sql`lpad((${next})::text, 7, '0')` : sql`printf('%07d', ${next})`
  const head = sql`substr(${sql.ref(owner)}, 1, 1) || ${padded}`
  const copy = (name: string): RawBuilder<unknown> => {
    if (ids.includes(name)) return sql`${head} || substr(${sql.ref(name)}, 9)`
    return name === json ? sql`replace(${sql.ref(name)}, '"' || ${sql.ref(owner)}, '"' || ${head})` : sql.ref(name)
  }
  await sql`
    insert into ${sql.table(table)} (${sql.join(columns.map((name) => sql.ref(name)))})
    with recursive copies(k) as (select 1 union all select k + 1 from copies where k < ${sql.lit(times)})
    select ${sql.join(columns.map(copy))} from ${sql.table(table)}, copies where ${where}`.execute(db)
}
