import type { Account, Posting } from './posting.ts'

/** What lines of the books add up to. Whole minor units. */
export type BooksSummary = {
  readonly cashInMinor: number
  readonly cashOutMinor: number
  /** Stock at cost: machines in hand and parts on the shelf. */
  readonly machinesMinor: number
  readonly shelfMinor: number
  readonly salesMinor: number
  readonly costOfSalesMinor: number
  readonly feesMinor: number
  readonly expensesMinor: number
  readonly writtenOffMinor: number
  /** Sales less what was sold stood at, fees, expenses and what was written off; below zero is a loss. */
  readonly profitMinor: number
}

/** One month: what moved in it, and what was there at its end. */
export type BooksMonth = {
  /** `2026-03` */
  readonly month: string
  /** Of this month's lines alone; its stock is by how much the stock changed. */
  readonly moved: BooksSummary
  /** Cash and stock since the books began. */
  readonly cashAtEndMinor: number
  readonly stockAtEndMinor: number
}

/** What these lines add up to. Cash in less cash out is the profit less the stock, always. */
export const summaryOf = (postings: readonly Posting[]): BooksSummary => {
  const of = (account: Account, keep: (minor: number) => boolean = () => true): number =>
    postings.reduce((sum, one) => (one.account === account && keep(one.minor) ? sum + one.minor : sum), 0)
  const [sales, costOfSales, fees] = [-of('sales') || 0, of('cost-of-sales'), of('fees')]
  const [expenses, writtenOff] = [of('expenses'), of('written-off')]
  return {
    cashInMinor: of('cash', (minor) => minor > 0),
    cashOutMinor: -of('cash', (minor) => minor < 0) || 0,
    machinesMinor: of('machines'),
    shelfMinor: of('shelf'),
    salesMinor: sales,
    costOfSalesMinor: costOfSales,
    feesMinor: fees,
    expensesMinor: expenses,
    writtenOffMinor: writtenOff,
    profitMinor: sales - costOfSales - fees - expenses - writtenOff,
  }
}

const monthLength = 'yyyy-mm'.length

/** Month by month, the earliest first; months in which nothing moved are left out. */
export const monthsOf = (postings: readonly Posting[]): readonly BooksMonth[] => {
  const months = new Map<string, Posting[]>()
  for (const posting of postings) {
    const month = posting.day.slice(0, monthLength)
    const known = months.get(month)
    if (known === undefined) months.set(month, [posting])
    else known.push(posting)
  }
  let [cash, stock] = [0, 0]
  return [...months]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([month, lines]) => {
      const moved = summaryOf(lines)
      cash += moved.cashInMinor - moved.cashOutMinor
      stock += moved.machinesMinor + moved.shelfMinor
      return { month, moved, cashAtEndMinor: cash, stockAtEndMinor: stock }
    })
}

/** What an hour brought, whole minor units; null where no time was spent. */
export const hourlyMinor = (profitMinor: number, minutes: number): number | null =>
  minutes > 0 ? Math.round((profitMinor * 60) / minutes) : null
