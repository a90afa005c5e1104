import { sql, type Kysely } from 'kysely'
import type { MachineState } from '../../bench/contract.ts'
import type { LedgerLine, MonthKind, TrafficLine } from '../../bench/ports.ts'
import type { Tables } from './tables.ts'
import { wordsOf } from './words.ts'

/** How many machines came and left each month. Virtual machines have no day of coming here. */
export const trafficLines = async (
  db: Kysely<Tables>,
  bench: string,
  kind: MonthKind,
): Promise<readonly TrafficLine[]> => {
  const month = (day: string) =>
    kind === 'calendar' ? sql`substr(${sql.ref(day)}, 1, 7)` : wordsOf(db).monthFrom6th(day)
  const { rows } = await sql<TrafficLine>`
    select month, currency, sum(came) as came, sum(paid) as "paidMinor", sum(gone) as "left" from (
      select ${month('came_day')} as month, currency, 1 as came, paid_minor as paid, 0 as gone
      from machine where bench = ${bench} and came_day is not null
      union all
      select ${month('left_day')}, currency, 0, 0, 1
      from machine where bench = ${bench} and left_day is not null) as moved
    group by month, currency order by month, currency`.execute(db)
  return rows
}

/** The lines of one month with the names of what they belong to. */
export const ledgerLines = async (
  db: Kysely<Tables>,
  bench: string,
  kind: MonthKind,
  month: string,
): Promise<readonly LedgerLine[]> => {
  const column = sql.ref(kind === 'calendar' ? 'l.month' : 'l.month_from_6th')
  const { kindOf } = wordsOf(db)
  const { rows } = await sql<LedgerLine>`
    select l.kind, l.log, coalesce(m.label, o.label, '') as label, l.currency, l.note, l.day, l.account, l.minor,
      l.minutes, coalesce(${kindOf('n.content')}, ${kindOf('e.content')}, '') as what
    from book_line l
    left join machine m on l.kind = 'machine' and m.id = l.log
    left join note n on l.kind = 'machine' and n.machine = l.log and n.id = l.note
    left join log o on l.kind <> 'machine' and o.kind = l.kind and o.id = l.log
    left join log_entry e on l.kind <> 'machine' and e.kind = l.kind and e.log = l.log and e.id = l.note
    where l.bench = ${bench} and ${column} = ${month}
    order by l.day, l.kind, l.log, l.rowid`.execute(db)
  return rows
}

/** Machines that were sold between two days. */
export const soldMachines = async (
  db: Kysely<Tables>,
  bench: string,
  from: string,
  to: string,
): Promise<readonly MachineState[]> => {
  const { rows } = await sql<{ readonly summary: string }>`
    select summary from machine
    where bench = ${bench} and open = 0 and left_day between ${from} and ${to}
      and (exit_name in ('sell-working', 'sell-for-spares') or received_minor > 0)
    order by left_day, id`.execute(db)
  return rows.map(({ summary }) => JSON.parse(summary) as MachineState)
}
