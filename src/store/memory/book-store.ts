import type { Projection } from '../../bench/books/book-line.ts'
import type { BenchId, MachineState } from '../../bench/contract.ts'
import { monthFrom6th, monthOf } from '../../bench/logs/calendar-day.ts'
import type { LogKind } from '../../bench/logs/entry.ts'
import type { BookStore, GroupLine, MonthKind, MonthLine, Page, PageAsked, ResultLine } from '../../bench/ports.ts'
import { projectLog, projectMachine } from '../../bench/projection.ts'
import { memoryLedger, memorySold, memoryTraffic } from './book-lines.ts'
import { othersOf, type MemoryLogs } from './logs.ts'

/** The lists and the books in memory: everything is made anew at each question. */
export const memoryBookStore = (logs: MemoryLogs): BookStore => ({
  machines: (bench, asked) => Promise.resolve(pageOf(machinesOf(logs, bench), asked) as Page<MachineState>),
  logs: (bench, kind, asked) => Promise.resolve(pageOf(othersOn(logs, bench, kind), asked)),
  groups: (bench, kind) =>
    Promise.resolve(groupLines(kind === 'machine' ? machinesOf(logs, bench) : othersOn(logs, bench, kind))),
  months: (bench, kind) => Promise.resolve(monthLines(everything(logs, bench), kind)),
  results: (bench, by) => Promise.resolve(resultLines(machinesOf(logs, bench), by)),
  traffic: (bench, kind) => Promise.resolve(memoryTraffic(machinesOf(logs, bench), kind)),
  lines: (bench, kind, month, asked) => Promise.resolve(memoryLedger(logs, bench, kind, month, asked)),
  lineCount: (bench, kind, month, currency) =>
    Promise.resolve(memoryLedger(logs, bench, kind, month, { currency }).length),
  sold: (bench, from, to) => Promise.resolve(memorySold(machinesOf(logs, bench), from, to)),
})

const machinesOf = (logs: MemoryLogs, bench: BenchId): readonly Projection[] =>
  [...logs.machines.values()]
    .filter((log) => log.bench === bench)
    .flatMap(({ entries }) => projectMachine(entries) ?? [])

const othersOn = (logs: MemoryLogs, bench: BenchId, kind: LogKind): readonly Projection[] =>
  [...othersOf(logs, kind).values()]
    .filter((log) => log.bench === bench)
    .map(({ entries }) => projectLog(kind, entries))

const everything = (logs: MemoryLogs, bench: BenchId): readonly Projection[] => [
  ...machinesOf(logs, bench),
  ...othersOn(logs, bench, 'part'),
  ...othersOn(logs, bench, 'expense'),
]

/** `after` is the place of the last one shown, counted from 1 in the order they came in. */
const pageOf = (all: readonly Projection[], { open, group, text, limit, after }: PageAsked): Page<unknown> => {
  const wanted = text?.trim().toLowerCase() ?? ''
  const found = all
    .map((one, index) => ({ one, rank: index + 1 }))
    .filter(({ one }) => one.open === open && (group === undefined || one.group === group))
    .filter(({ one }) => one.label.toLowerCase().includes(wanted))
    .reverse()
  const left = found.filter(({ rank }) => after === undefined || rank < after)
  const shown = left.slice(0, limit)
  return {
    items: shown.map(({ one }) => one.summary),
    total: found.length,
    after: left.length > limit ? (shown.at(-1)?.rank ?? null) : null,
  }
}

/** Sums up what has the same key, in the order of the keys. */
const summed = <Item, Line>(
  items: readonly Item[],
  keyOf: (item: Item) => string,
  begin: (item: Item) => Line,
  add: (line: Line, item: Item) => Line,
): readonly Line[] => {
  const lines = new Map<string, Line>()
  for (const item of items) {
    const key = keyOf(item)
    lines.set(key, add(lines.get(key) ?? begin(item), item))
  }
  return [...lines].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, line]) => line)
}

const groupLines = (all: readonly Projection[]): readonly GroupLine[] =>
  summed<Projection, GroupLine>(
    all.filter(({ open }) => open),
    ({ group, currency }) => `${group} ${currency}`,
    ({ group, currency }) => ({ group, currency, logs: 0, count: 0, stockMinor: 0 }),
    (line, { count, stockMinor }) => ({
      ...line,
      logs: line.logs + 1,
      count: line.count + count,
      stockMinor: line.stockMinor + stockMinor,
    }),
  )

const monthLines = (all: readonly Projection[], kind: MonthKind): readonly MonthLine[] =>
  summed<MonthLine, MonthLine>(
    all.flatMap(({ lines, currency }) =>
      lines.map(({ day, account, minor, minutes }) => ({
        month: kind === 'calendar' ? monthOf(day) : monthFrom6th(day),
        currency,
        account,
        minor,
        minutes,
      })),
    ),
    ({ month, currency, account }) => `${month} ${currency} ${account}`,
    (line) => ({ ...line, minor: 0, minutes: 0 }),
    (line, { minor, minutes }) => ({ ...line, minor: line.minor + minor, minutes: line.minutes + minutes }),
  )

const resultLines = (all: readonly Projection[], by: 'blueprint' | 'complaint' | 'source'): readonly ResultLine[] => {
  const keyOf = (one: Projection): string => (by === 'blueprint' ? one.group : (one.result?.[by] ?? ''))
  const lines = summed<Projection, ResultLine>(
    all.filter(({ open, result }) => !open && result !== null),
    (one) => `${keyOf(one)} ${one.currency}`,
    (one) => ({
      key: keyOf(one),
      currency: one.currency,
      machines: 0,
      soldWorking: 0,
      receivedMinor: 0,
      costMinor: 0,
      profitMinor: 0,
      minutes: 0,
      atLoss: 0,
      profitSquares: 0,
    }),
    (line, { result }) => (result === null ? line : withResult(line, result)),
  )
  return lines.toSorted((a, b) => b.profitMinor - a.profitMinor || (a.key < b.key ? -1 : 1))
}

const withResult = (line: ResultLine, result: NonNullable<Projection['result']>): ResultLine => ({
  ...line,
  machines: line.machines + 1,
  soldWorking: line.soldWorking + (result.exit === 'sell-working' ? 1 : 0),
  receivedMinor: line.receivedMinor + result.receivedMinor,
  costMinor: line.costMinor + result.costMinor,
  profitMinor: line.profitMinor + result.profitMinor,
  minutes: line.minutes + result.minutes,
  atLoss: line.atLoss + (result.profitMinor < 0 ? 1 : 0),
  profitSquares: line.profitSquares + result.profitMinor ** 2,
})
