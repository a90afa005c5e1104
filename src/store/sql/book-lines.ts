import { sql, type Kysely } from 'kysely'
import type { LedgerLine, LinesAsked, MonthKind, SoldMachine, TrafficLine } from '../../bench/ports.ts'
import { question, type Question } from './question.ts'
import type { Tables } from './tables.ts'

/** How many machines came and left each month. Virtual machines have no day of coming here. */
export const trafficLines = (db: Kysely<Tables>, bench: string, kind: MonthKind): Promise<readonly TrafficLine[]> =>
  trafficQuestions[kind](db, { bench })

const trafficQuestion = (kind: MonthKind) =>
  question<{ readonly bench: string }, TrafficLine>((put, { monthFrom6th }) => {
    const month = (day: string) => (kind === 'calendar' ? sql`substr(${sql.ref(day)}, 1, 7)` : monthFrom6th(day))
    return sql`
    select month, currency, sum(came) as came, sum(paid) as "paidMinor", sum(gone) as "left" from (
      select ${month('came_day')} as month, currency, 1 as came, paid_minor as paid, 0 as gone
      from machine where bench = ${put('bench')} and came_day is not null
      union all
      select ${month('left_day')}, currency, 0, 0, 1
      from machine where bench = ${put('bench')} and left_day is not null) as moved
    group by month, currency order by month, currency`
  })

const trafficQuestions = { calendar: trafficQuestion('calendar'), 'from-6th': trafficQuestion('from-6th') } as const

const monthColumns = { calendar: 'month', 'from-6th': 'month_from_6th' } as const

type Month = { readonly bench: string; readonly month: string }
type LineValues = Month & LinesAsked
type Given = Readonly<Record<keyof LinesAsked, boolean>>

/** The lines of one month with the names of what they belong to. */
export const ledgerLines = (
  db: Kysely<Tables>,
  kind: MonthKind,
  month: Month,
  asked: LinesAsked = {},
): Promise<readonly LedgerLine[]> => lineQuestion(kind, asked)(db, { ...month, ...asked })

/** Names are looked up for the lines that are given out alone. Days come in the order of an index, so a few from the beginning cost no more in a month of many. */
const makeLineQuestion = (kind: MonthKind, { currency, day, limit }: Given) =>
  question<LineValues, LedgerLine>(
    (put, { kindOf }) => sql`
    select l.kind, l.log, coalesce(m.label, o.label, '') as label, l.currency, l.note, l.day, l.account, l.minor,
      l.minutes, coalesce(${kindOf('n.content')}, ${kindOf('e.content')}, '') as what
    from (
      select kind, log, currency, note, day, account, minor, minutes, rowid as place from book_line
      where bench = ${put('bench')} and ${sql.ref(monthColumns[kind])} = ${put('month')}
        ${day ? sql`and day = ${put('day')}` : anyDay} ${currency ? sql`and currency = ${put('currency')}` : sql``}
      order by day, kind, log, rowid ${limit ? sql`limit ${put('limit')}` : sql``}) as l
    left join machine m on l.kind = 'machine' and m.id = l.log
    left join note n on l.kind = 'machine' and n.machine = l.log and n.id = l.note
    left join log o on l.kind <> 'machine' and o.kind = l.kind and o.id = l.log
    left join log_entry e on l.kind <> 'machine' and e.kind = l.kind and e.log = l.log and e.id = l.note
    order by l.day, l.kind, l.log, l.place`,
  )

/** Without it SQLite takes the index of the other kind of months and reads the lines of all of them. */
const anyDay = sql`and day >= ''`

const lineQuestions = new Map<string, Question<LineValues, LedgerLine>>()

const lineQuestion = (kind: MonthKind, asked: LinesAsked): Question<LineValues, LedgerLine> => {
  const given = { currency: asked.currency !== undefined, day: asked.day !== undefined, limit: asked.limit !== undefined } // prettier-ignore
  const key = [kind, ...Object.values(given)].join(' ')
  const there = lineQuestions.get(key) ?? makeLineQuestion(kind, given)
  lineQuestions.set(key, there)
  return there
}

/** How many lines there are of a month, from the sums of the books. */
export const countLines = async (
  db: Kysely<Tables>,
  kind: MonthKind,
  month: Month,
  currency?: string,
): Promise<number> => {
  const [found] = await (currency === undefined ? countAll : countOne)(db, { ...month, kind, currency })
  return found?.lines ?? 0
}

type Counted = Month & { readonly kind: MonthKind; readonly currency: string | undefined }

const countQuestion = (inOne: boolean) =>
  question<Counted, { readonly lines: number }>(
    (put) => sql`
    select coalesce(sum(lines), 0) as lines from book_month
    where bench = ${put('bench')} and month_kind = ${put('kind')} and month = ${put('month')}
      ${inOne ? sql`and currency = ${put('currency')}` : sql``}`,
  )
const [countAll, countOne] = [countQuestion(false), countQuestion(true)]

type Days = { readonly bench: string; readonly from: string; readonly to: string }

/** Machines that were sold between two days. */
export const soldMachines = (db: Kysely<Tables>, days: Days): Promise<readonly SoldMachine[]> => soldQuestion(db, days)

const soldQuestion = question<Days, SoldMachine>(
  (put, { numberIn }) => sql`
  select id, label as name, currency, paid_minor as "paidMinor", ${numberIn('summary', 'receivedMinor')} as "receivedMinor",
    came_day as "boughtDay", left_day as "soldDay"
  from machine
  where bench = ${put('bench')} and open = 0 and left_day between ${put('from')} and ${put('to')}
    and (exit_name in ('sell-working', 'sell-for-spares') or received_minor > 0)
  order by left_day, id`,
)
