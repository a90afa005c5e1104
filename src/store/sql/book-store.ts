import { sql, type Kysely, type SelectQueryBuilder } from 'kysely'
import type { Currency } from '../../base/money.ts'
import type { Account } from '../../bench/books/book-line.ts'
import type { MachineState } from '../../bench/contract.ts'
import type { BookStore, GroupLine, MonthKind, MonthLine, Page, PageAsked, ResultLine } from '../../bench/ports.ts'
import { ledgerLines, soldMachines, trafficLines } from './book-lines.ts'
import { inTurn } from './in-turn.ts'
import type { Tables } from './tables.ts'
import { wordsOf, type Words } from './words.ts'

/** The lists and the books, from what is kept beside the logs. */
export const sqlBookStore = (db: Kysely<Tables>): BookStore => {
  const machines = inTurn((key) => machinePage(db, ...(JSON.parse(key) as [string, PageAsked])))
  return {
    machines: async (bench, asked) => (await machines(JSON.stringify([bench, asked]))) as Page<MachineState>,
    logs: (bench, kind, asked) => logPage(db, bench, kind, asked),
    groups: (bench, kind) => groupLines(db, bench, kind),
    months: (bench, kind) => monthLines(db, bench, kind),
    results: (bench, by) => resultLines(db, bench, by),
    traffic: (bench, kind) => trafficLines(db, bench, kind),
    lines: (bench, kind, month) => ledgerLines(db, bench, kind, month),
    sold: (bench, from, to) => soldMachines(db, bench, from, to),
  }
}

type Listed = { readonly rank: number | null; readonly summary: string | null; readonly total: number | null }

const machinePage = (db: Kysely<Tables>, bench: string, asked: PageAsked): Promise<Page<unknown>> =>
  pageOf(db, narrow(db.selectFrom('machine').where('bench', '=', bench), asked, wordsOf(db)), asked)

const logPage = (db: Kysely<Tables>, bench: string, kind: string, asked: PageAsked): Promise<Page<unknown>> =>
  pageOf(
    db,
    narrow(db.selectFrom('log').where('bench', '=', bench).where('kind', '=', kind), asked, wordsOf(db)),
    asked,
  )

/** Both tables hold these columns under these names. */
type Narrowed<Table extends 'machine' | 'log'> = SelectQueryBuilder<Tables, Table, object>

const narrow = <Table extends 'machine' | 'log'>(
  query: Narrowed<Table>,
  { open, group, text }: PageAsked,
  words: Words,
): Narrowed<Table> => {
  let narrowed = query.where(sql<boolean>`open = ${open ? 1 : 0}`)
  if (group !== undefined) narrowed = narrowed.where(sql<boolean>`group_name = ${group}`)
  if (text !== undefined && text.trim() !== '') {
    const pattern = `%${text.trim().replaceAll(/[\\%_]/g, (sign) => `\\${sign}`)}%`
    narrowed = narrowed.where(words.isLike('label', pattern))
  }
  return narrowed
}

/** The newest first, one more than asked for, to know whether there are further ones. */
const stretch = <Table extends 'machine' | 'log'>(
  query: Narrowed<Table>,
  { limit, after }: PageAsked,
): Narrowed<Table> => {
  const ordered = query.orderBy(sql`rank`, 'desc').limit(limit + 1)
  return after === undefined ? ordered : ordered.where(sql<boolean>`rank < ${after}`)
}

/** A stretch and how many there are in all, as one statement; the number stands in a row of its own, for the stretch may be empty. */
const pageOf = async <Table extends 'machine' | 'log'>(
  db: Kysely<Tables>,
  narrowed: Narrowed<Table>,
  asked: PageAsked,
): Promise<Page<unknown>> => {
  const shown = stretch(narrowed, asked).select([sql`rank`.as('rank'), sql`summary`.as('summary')])
  const counted = narrowed.select(({ fn }) => fn.countAll().as('total'))
  const { rows } = await sql<Listed>`
    select rank, summary, null as total from (${shown}) as shown
    union all select null, null, total from (${counted}) as counted`.execute(db)
  return placed(rows, asked.limit)
}

const placed = (rows: readonly Listed[], limit: number): Page<unknown> => {
  // Rows put together from two questions have no order that can be relied on.
  const listed = rows.filter(({ total }) => total === null).sort((a, b) => (b.rank ?? 0) - (a.rank ?? 0))
  const shown = listed.slice(0, limit)
  return {
    items: shown.flatMap(({ summary }) => (summary === null ? [] : [JSON.parse(summary) as unknown])),
    total: rows.find(({ total }) => total !== null)?.total ?? 0,
    after: listed.length > limit ? (shown.at(-1)?.rank ?? null) : null,
  }
}

const groupLines = async (db: Kysely<Tables>, bench: string, kind: string): Promise<readonly GroupLine[]> => {
  const table = kind === 'machine' ? sql.table('machine') : sql.table('log')
  const ofKind = kind === 'machine' ? sql`` : sql`and kind = ${kind}`
  const { rows } = await sql<GroupLine>`
    select group_name as "group", currency, count(*) as logs, sum("count") as "count", sum(stock_minor) as "stockMinor"
    from ${table} where bench = ${bench} and open = 1 ${ofKind}
    group by group_name, currency order by group_name, currency`.execute(db)
  return rows
}

const monthLines = async (db: Kysely<Tables>, bench: string, kind: MonthKind): Promise<readonly MonthLine[]> => {
  const rows = await db
    .selectFrom('book_month')
    .where('bench', '=', bench)
    .where('month_kind', '=', kind)
    .select(['month', 'currency', 'account', 'minor', 'milliminutes'])
    .orderBy('month')
    .orderBy('currency')
    .orderBy('account')
    .execute()
  return rows.map(({ month, currency, account, minor, milliminutes }) => ({
    month,
    currency: currency as Currency,
    account: account as Account,
    minor,
    minutes: milliminutes / 1000,
  }))
}

const resultLines = async (
  db: Kysely<Tables>,
  bench: string,
  by: 'blueprint' | 'complaint' | 'source',
): Promise<readonly ResultLine[]> => {
  const key = { blueprint: 'group_name', complaint: 'complaint', source: 'source' } as const
  const column = sql.ref(key[by])
  const { rows } = await sql<ResultLine>`
    select ${column} as "key", currency, count(*) as machines,
      count(*) filter (where exit_name = 'sell-working') as "soldWorking", sum(received_minor) as "receivedMinor",
      sum(cost_minor) as "costMinor", sum(profit_minor) as "profitMinor", sum(minutes) as minutes,
      count(*) filter (where profit_minor < 0) as "atLoss", sum(cast(profit_minor as double precision) * profit_minor) as "profitSquares"
    from machine where bench = ${bench} and open = 0 and left_day is not null
    group by ${column}, currency order by sum(profit_minor) desc, ${column}`.execute(db)
  return rows
}
