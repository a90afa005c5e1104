import type { Projection } from '../../bench/books/book-line.ts'
import type { BenchId, MachineState } from '../../bench/contract.ts'
import { monthFrom6th, monthOf } from '../../bench/logs/calendar-day.ts'
import type { LogKind } from '../../bench/logs/entry.ts'
import type { LedgerLine, LinesAsked, MonthKind, SoldMachine, TrafficLine } from '../../bench/ports.ts'
import { projectLog, projectMachine } from '../../bench/projection.ts'
import { othersOf, type MemoryLogs } from './logs.ts'

const monthName = (kind: MonthKind, day: string): string => (kind === 'calendar' ? monthOf(day) : monthFrom6th(day))

/** How many machines came and left each month. Virtual machines have no result and are left out. */
export const memoryTraffic = (machines: readonly Projection[], kind: MonthKind): readonly TrafficLine[] => {
  const lines = new Map<string, TrafficLine>()
  const add = (
    day: string,
    { currency }: Projection,
    more: { came: number; paidMinor: number; left: number },
  ): void => {
    const month = monthName(kind, day)
    const key = `${month} ${currency}`
    const line = lines.get(key) ?? { month, currency, came: 0, paidMinor: 0, left: 0 }
    lines.set(key, {
      ...line,
      came: line.came + more.came,
      paidMinor: line.paidMinor + more.paidMinor,
      left: line.left + more.left,
    })
  }
  for (const one of machines) {
    if (one.result === null) continue
    add(one.result.cameDay, one, { came: 1, paidMinor: (one.summary as MachineState).paidMinor, left: 0 })
    if (one.result.leftDay !== null) add(one.result.leftDay, one, { came: 0, paidMinor: 0, left: 1 })
  }
  return [...lines].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, line]) => line)
}

/** The lines of one month with the names of what they belong to. */
export const memoryLedger = (
  logs: MemoryLogs,
  bench: BenchId,
  kind: MonthKind,
  month: string,
  { currency: only, day, limit }: LinesAsked = {},
): readonly LedgerLine[] => {
  const found: LedgerLine[] = []
  const add = (
    of: LedgerLine['kind'],
    log: string,
    entries: readonly { readonly id: string; readonly content: { readonly kind: string } }[],
    projection: Projection | null,
  ): void => {
    const kinds = new Map(entries.map(({ id, content }) => [id, content.kind]))
    for (const line of projection?.lines ?? []) {
      if (monthName(kind, line.day) !== month) continue
      const { label = '', currency = 'GBP' } = projection ?? {}
      found.push({ ...line, kind: of, log, label, currency, what: kinds.get(line.note) ?? '' })
    }
  }
  for (const [id, log] of logs.machines) {
    if (log.bench === bench) add('machine', id, log.entries, projectMachine(log.entries))
  }
  for (const other of ['part', 'expense'] as const satisfies readonly LogKind[]) {
    for (const [id, log] of othersOf(logs, other)) {
      if (log.bench === bench) add(other, id, log.entries, projectLog(other, log.entries))
    }
  }
  const keyOf = ({ day, kind: of, log }: LedgerLine): string => [day, of, log].join(' ')
  return found
    .filter((line) => (only === undefined || line.currency === only) && (day === undefined || line.day === day))
    .toSorted((a, b) => (keyOf(a) === keyOf(b) ? 0 : keyOf(a) < keyOf(b) ? -1 : 1))
    .slice(0, limit)
}

/** Machines that were sold between two days. */
export const memorySold = (machines: readonly Projection[], from: string, to: string): readonly SoldMachine[] =>
  machines
    .filter(({ open, result }) => {
      if (open || result === null || result.leftDay === null) return false
      const isSold = result.exit === 'sell-working' || result.exit === 'sell-for-spares' || result.receivedMinor > 0
      return isSold && result.leftDay >= from && result.leftDay <= to
    })
    .map(({ summary, result }): SoldMachine => {
      const { id, name, currency, paidMinor, receivedMinor } = summary as MachineState
      return { id, name, currency, paidMinor, receivedMinor, boughtDay: result?.cameDay ?? '', soldDay: result?.leftDay ?? '' } // prettier-ignore
    })
    .toSorted((a, b) => (a.soldDay === b.soldDay ? (a.id < b.id ? -1 : 1) : a.soldDay < b.soldDay ? -1 : 1))
