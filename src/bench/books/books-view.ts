import type { Currency } from '../../base/money.ts'
import { complaints } from '../../facts/complaints.ts'
import type { Region } from '../../facts/regions.ts'
import { notAdvice, taxYearOf } from '../../facts/tax-years.ts'
import { whereFrom } from '../../facts/where-from.ts'
import { monthFrom6th, monthOf } from '../logs/calendar-day.ts'
import type { MonthKind, MonthLine, ResultLine, SoldMachine, TrafficLine } from '../ports.ts'
import { periodOf, type Period } from './figures.ts'
import {
  marginOf,
  marksOf,
  monthKindOf,
  yearOfMonth,
  type MarginLine,
  type MarginView,
  type MarkView,
} from './tax-year-books.ts'
import { paysBy, paysLines, paysMethod, type PaysBy, type PaysLine } from './what-pays.ts'

export type MonthBooks = Period & {
  /** `2026-03` */
  readonly month: string
  /** Stock at cost at its end. */
  readonly stockAtEndMinor: number
}

export type YearBooks = Period & {
  readonly name: string
  readonly from: string
  readonly to: string
  /** Its months, as they are asked for: `2026-03`, the latest first. */
  readonly months: readonly string[]
  readonly marks: readonly MarkView[]
}

/** Margins of one year; of the lines only the latest are given out, the stock book has all of them. */
export type YearMargin = Omit<MarginView, 'lines'> & {
  readonly year: string
  readonly machines: number
  readonly latest: readonly MarginLine[]
}

/** The books of one currency. */
export type CurrencyBooks = {
  readonly currency: Currency
  readonly all: Period
  readonly inHand: { readonly machines: number; readonly machinesMinor: number; readonly shelfMinor: number }
  readonly thisMonth: MonthBooks
  readonly thisYear: YearBooks
  /** The latest first; months in which nothing moved are left out. */
  readonly months: readonly MonthBooks[]
  readonly years: readonly YearBooks[]
  readonly margin: YearMargin | null
  readonly pays: readonly { readonly by: PaysBy; readonly lines: readonly PaysLine[] }[]
}

/** GET /api/bench/:bench/books */
export type BooksView = {
  readonly today: string
  readonly region: Region
  /** How the months of tax years run. */
  readonly yearMonths: MonthKind
  /** The currency of the settings first. There is always one. */
  readonly currencies: readonly [CurrencyBooks, ...CurrencyBooks[]]
  readonly paysMethod: string
  readonly note: string
}

/** What the books are made from. `sold`: in the year that margins are shown for. */
export type BooksSeen = {
  readonly today: string
  readonly region: Region
  readonly currency: Currency
  readonly months: readonly MonthLine[]
  readonly yearMonths: readonly MonthLine[]
  readonly traffic: readonly TrafficLine[]
  readonly yearTraffic: readonly TrafficLine[]
  readonly results: Readonly<Record<PaysBy, readonly ResultLine[]>>
  readonly year: string
  readonly sold: readonly SoldMachine[]
  readonly blueprintNames: ReadonlyMap<string, string>
}

/** The books of a bench. Virtual machines are in none of what it is made from. */
export const booksView = (seen: BooksSeen): BooksView => {
  const used = [...new Set([...seen.months, ...seen.traffic].map(({ currency }) => currency))]
  const others = used.filter((one) => one !== seen.currency).sort()
  return {
    today: seen.today,
    region: seen.region,
    yearMonths: monthKindOf(seen.region),
    currencies: [currencyBooks(seen, seen.currency), ...others.map((one) => currencyBooks(seen, one))],
    paysMethod,
    note: notAdvice,
  }
}

const currencyBooks = (seen: BooksSeen, currency: Currency): CurrencyBooks => {
  const all = periodOf(seen.months, seen.traffic, currency)
  const months = monthsOf(seen, currency)
  const years = yearsOf(seen, currency)
  const thisMonth = monthOf(seen.today)
  const year = taxYearOf(seen.region, seen.today)
  return {
    currency,
    all,
    inHand: { machines: all.came - all.left, machinesMinor: all.machinesMinor, shelfMinor: all.shelfMinor },
    thisMonth: months.find(({ month }) => month === thisMonth) ?? {
      ...periodOf([], [], currency),
      month: thisMonth,
      stockAtEndMinor: all.machinesMinor + all.shelfMinor,
    },
    thisYear: years.find(({ name }) => name === year.name) ?? yearBooks(seen, currency, year, []),
    months,
    years,
    margin: yearMargin(seen, currency),
    pays: paysBy.map((by) => ({ by, lines: paysLines(seen.results[by], currency, namer(by, seen)) })),
  }
}

/** Months that have a line or a machine, the latest first. */
const monthNames = (lines: readonly MonthLine[], traffic: readonly TrafficLine[], currency: Currency) =>
  [...new Set([...lines, ...traffic].filter((one) => one.currency === currency).map(({ month }) => month))]
    .sort()
    .reverse()

const monthsOf = ({ months, traffic }: BooksSeen, currency: Currency): readonly MonthBooks[] => {
  let stock = 0
  return monthNames(months, traffic, currency)
    .reverse()
    .map((month) => {
      const period = periodOf(
        months.filter((line) => line.month === month),
        traffic.filter((line) => line.month === month),
        currency,
      )
      stock += period.machinesMinor + period.shelfMinor
      return { ...period, month, stockAtEndMinor: stock }
    })
    .reverse()
}

const yearsOf = (seen: BooksSeen, currency: Currency): readonly YearBooks[] => {
  const months = monthNames(seen.yearMonths, seen.yearTraffic, currency)
  const years = new Map(months.map((month) => yearOfMonth(seen.region, month)).map((year) => [year.name, year]))
  return [...years.values()].map((year) =>
    yearBooks(
      seen,
      currency,
      year,
      months.filter((month) => yearOfMonth(seen.region, month).name === year.name),
    ),
  )
}

type Year = { readonly name: string; readonly from: string; readonly to: string }

const yearBooks = (seen: BooksSeen, currency: Currency, year: Year, months: readonly string[]): YearBooks => {
  const within = <Line extends { readonly month: string }>(lines: readonly Line[]): readonly Line[] =>
    lines.filter(({ month }) => months.includes(month))
  const period = periodOf(within(seen.yearMonths), within(seen.yearTraffic), currency)
  const { name, from, to } = year
  const marks = marksOf(seen.region, currency, period.salesMinor, twelveMonths(seen, currency, to))
  return { ...period, name, from, to, months, marks }
}

/** What was taken in the twelve months up to the year's last month, or this month where the year is not over. */
const twelveMonths = ({ today, region, yearMonths }: BooksSeen, currency: Currency, to: string): number => {
  const end = today < to ? today : to
  const last = monthKindOf(region) === 'from-6th' ? monthFrom6th(end) : monthOf(end)
  const first = `${Number(last.slice(0, 4)) - 1}${last.slice(4)}`
  return (
    -yearMonths.reduce(
      (sum, line) =>
        line.currency === currency && line.account === 'sales' && line.month > first && line.month <= last
          ? sum + line.minor
          : sum,
      0,
    ) || 0
  )
}

/** Lines of margins that are given out with the books. */
const latestMargins = 30

const yearMargin = ({ region, sold, year }: BooksSeen, currency: Currency): YearMargin | null => {
  const margin = marginOf(region, currency, sold)
  if (margin === null) return null
  const { lines, ...rest } = margin
  return { ...rest, year, machines: lines.length, latest: lines.slice(-latestMargins).toReversed() }
}

const namer =
  (by: PaysBy, { blueprintNames }: BooksSeen) =>
  (key: string): string => {
    if (key === '') return 'Not noted'
    const names: Readonly<Record<string, string>> = by === 'complaint' ? complaints : whereFrom
    return (by === 'blueprint' ? blueprintNames.get(key) : names[key]) ?? key
  }
