import { sql, type Kysely } from 'kysely'
import type { Currency } from '../../base/money.ts'
import type { Account } from '../../bench/books/book-line.ts'
import type { MachineState } from '../../bench/contract.ts'
import type { BookStore, GroupLine, MonthKind, MonthLine, Page, PageAsked, ResultLine } from '../../bench/ports.ts'
import { countLines, ledgerLines, soldMachines, trafficLines } from './book-lines.ts'
import { inTurn } from './in-turn.ts'
import { makeKnownSummaries } from './known-summaries.ts'
import { pageOf } from './pages.ts'
import { question } from './question.ts'
import type { Tables } from './tables.ts'

/** The lists and the books, from what is kept beside the logs. */
export const sqlBookStore = (db: Kysely<Tables>): BookStore => {
  const known = makeKnownSummaries()
  const machines = inTurn((key) => {
    const [bench, asked] = JSON.parse(key) as [string, PageAsked]
    return pageOf(db, known, { bench, kind: 'machine' }, asked)
  })
  return {
    machines: async (bench, asked) => (await machines(JSON.stringify([bench, asked]))) as Page<MachineState>,
    logs: (bench, kind, asked) => pageOf(db, known, { bench, kind }, asked),
    groups: (bench, kind) => groupLines(db, bench, kind),
    months: (bench, kind) => monthLines(db, bench, kind),
    results: (bench, by) => resultLines(db, bench, by),
    traffic: (bench, kind) => trafficLines(db, bench, kind),
    lines: (bench, kind, month, asked) => ledgerLines(db, kind, { bench, month }, asked),
    lineCount: (bench, kind, month, currency) => countLines(db, kind, { bench, month }, currency),
    sold: (bench, from, to) => soldMachines(db, { bench, from, to }),
  }
}

const groupLines = (db: Kysely<Tables>, bench: string, kind: string): Promise<readonly GroupLine[]> =>
  groupQuestions[kind === 'machine' ? 'machine' : 'log'](db, { bench, kind })

const groupQuestion = (table: 'machine' | 'log') =>
  question<{ readonly bench: string; readonly kind: string }, GroupLine>(
    (put) => sql`
    select group_name as "group", currency, count(*) as logs, sum("count") as "count", sum(stock_minor) as "stockMinor"
    from ${sql.table(table)} where bench = ${put('bench')} and open = 1 ${table === 'machine' ? sql`` : sql`and kind = ${put('kind')}`}
    group by group_name, currency order by group_name, currency`,
  )

const groupQuestions = { machine: groupQuestion('machine'), log: groupQuestion('log') } as const

const monthLines = async (db: Kysely<Tables>, bench: string, kind: MonthKind): Promise<readonly MonthLine[]> =>
  (await monthQuestion(db, { bench, kind })).map(({ month, currency, account, minor, milliminutes }) => ({
    month,
    currency: currency as Currency,
    account: account as Account,
    minor,
    minutes: milliminutes / 1000,
  }))

type MonthSum = Pick<Tables['book_month'], 'month' | 'currency' | 'account' | 'minor' | 'milliminutes'>

const monthQuestion = question<{ readonly bench: string; readonly kind: MonthKind }, MonthSum>(
  (put) => sql`
  select month, currency, account, minor, milliminutes from book_month
  where bench = ${put('bench')} and month_kind = ${put('kind')} order by month, currency, account`,
)

const resultLines = (
  db: Kysely<Tables>,
  bench: string,
  by: 'blueprint' | 'complaint' | 'source',
): Promise<readonly ResultLine[]> => resultQuestions[by](db, { bench })

const resultQuestion = (name: 'group_name' | 'complaint' | 'source') => {
  const column = sql.ref(name)
  return question<{ readonly bench: string }, ResultLine>(
    (put) => sql`
    select ${column} as "key", currency, count(*) as machines,
      count(*) filter (where exit_name = 'sell-working') as "soldWorking", sum(received_minor) as "receivedMinor",
      sum(cost_minor) as "costMinor", sum(profit_minor) as "profitMinor", sum(minutes) as minutes,
      count(*) filter (where profit_minor < 0) as "atLoss", sum(cast(profit_minor as double precision) * profit_minor) as "profitSquares"
    from machine where bench = ${put('bench')} and open = 0 and left_day is not null
    group by ${column}, currency order by sum(profit_minor) desc, ${column}`,
  )
}

const resultQuestions = {
  blueprint: resultQuestion('group_name'),
  complaint: resultQuestion('complaint'),
  source: resultQuestion('source'),
} as const
