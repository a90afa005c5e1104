import { sql, type Transaction } from 'kysely'
import type { BookLine, Projection } from '../../bench/books/book-line.ts'
import { monthFrom6th, monthOf } from '../../bench/logs/calendar-day.ts'
import type { LogKind } from '../../bench/logs/entry.ts'
import { projectLog, projectMachine } from '../../bench/projection.ts'
import type { Tables } from './tables.ts'
import { readEntries } from './read-entries.ts'
import { readNotes } from './read-notes.ts'

/** Values in one insert, well under SQLite's limit of 32,766 bound values. */
const rowsAtOnce = 500

/** Makes anew what is kept beside a machine's log. */
export const projectMachineLog = async (db: Transaction<Tables>, machine: string): Promise<void> => {
  const projection = projectMachine(await readNotes(db, machine))
  if (projection === null) return
  const { bench } = await db
    .updateTable('machine')
    .set(machineColumns(projection))
    .where('id', '=', machine)
    .returning('bench')
    .executeTakeFirstOrThrow()
  await putLines(db, { kind: 'machine', log: machine, bench, currency: projection.currency }, projection.lines)
}

/** Makes anew what is kept beside another log. */
export const projectOtherLog = async (db: Transaction<Tables>, kind: LogKind, log: string): Promise<void> => {
  const projection = projectLog(kind, await readEntries(db, kind, log))
  const { bench } = await db
    .updateTable('log')
    .set(columnsOf(projection))
    .where('kind', '=', kind)
    .where('id', '=', log)
    .returning('bench')
    .executeTakeFirstOrThrow()
  await putLines(db, { kind, log, bench, currency: projection.currency }, projection.lines)
}

/** What stands in the row of a log beside it. */
export const columnsOf = ({ open, label, group, currency, count, stockMinor, summary }: Projection) => ({
  open: open ? 1 : 0,
  label,
  group_name: group,
  currency,
  count,
  stock_minor: stockMinor,
  summary: JSON.stringify(summary),
})

/** All that stands in the row of a machine beside it; nothing for a log that has no first note. */
export const machineColumns = (projection: Projection | null) =>
  projection === null ? {} : { ...columnsOf(projection), ...resultColumns(projection.result) }

/** What stands in the row of a machine besides. */
export const resultColumns = (result: Projection['result']) =>
  result === null
    ? {}
    : {
        complaint: result.complaint,
        source: result.source,
        came_day: result.cameDay,
        left_day: result.leftDay,
        exit_name: result.exit,
        paid_minor: result.paidMinor,
        received_minor: result.receivedMinor,
        cost_minor: result.costMinor,
        profit_minor: result.profitMinor,
        minutes: result.minutes,
      }

export type LogOfLines = Pick<Tables['book_line'], 'kind' | 'log' | 'bench' | 'currency'>

/** A note that is struck out takes its lines with it and may change later ones; those before the first that differs stay. */
export const putLines = async (db: Transaction<Tables>, log: LogOfLines, lines: readonly BookLine[]): Promise<void> => {
  const there = await db
    .selectFrom('book_line')
    .select([sql<number>`rowid`.as('rowid'), 'note', 'day', 'account', 'minor', 'minutes', 'currency'])
    .where('kind', '=', log.kind)
    .where('log', '=', log.log)
    .orderBy(sql`rowid`)
    .execute()
  const differs = there.findIndex((row, i) => row.currency !== log.currency || !sameLine(row, lines[i]))
  const same = differs === -1 ? there.length : differs
  const gone = there.slice(same).map(({ rowid }) => rowid)
  for (let from = 0; from < gone.length; from += rowsAtOnce) {
    await db
      .deleteFrom('book_line')
      .where(sql`rowid`, 'in', gone.slice(from, from + rowsAtOnce))
      .execute()
  }
  await insertLines(db, log, lines.slice(same))
}

/** Puts lines after those that are there. */
export const insertLines = async (
  db: Transaction<Tables>,
  log: LogOfLines,
  lines: readonly BookLine[],
): Promise<void> => {
  for (let from = 0; from < lines.length; from += rowsAtOnce) {
    await db
      .insertInto('book_line')
      .values(lines.slice(from, from + rowsAtOnce).map((line) => lineRow(log, line)))
      .execute()
  }
}

export const lineRow = (log: LogOfLines, { note, day, account, minor, minutes }: BookLine) => ({
  ...log,
  note,
  day,
  month: monthOf(day),
  month_from_6th: monthFrom6th(day),
  account,
  minor,
  minutes,
})

type KeptLine = Pick<Tables['book_line'], 'note' | 'day' | 'account' | 'minor' | 'minutes'>

/** Whether a line that is kept is the one that it would be now. */
export const sameLine = (row: KeptLine, line: BookLine | undefined): boolean =>
  line !== undefined &&
  row.note === line.note &&
  row.day === line.day &&
  row.account === line.account &&
  row.minor === line.minor &&
  row.minutes === line.minutes
