import type { Currency } from '../../base/money.ts'
import { hourlyMinor } from '../../engines/money/index.ts'
import type { MonthLine, TrafficLine } from '../ports.ts'
import type { Account } from './book-line.ts'

/** What a stretch of time brought and cost, minor units. Profit is sales less what was sold stood at, fees, spending and what was written off. */
export type Figures = {
  readonly came: number
  readonly left: number
  /** Paid for machines. */
  readonly boughtMinor: number
  /** Paid for parts, materials and fetching, for machines and for the shelf. */
  readonly materialsMinor: number
  /** Taken, less what was given back. */
  readonly salesMinor: number
  readonly costOfSalesMinor: number
  /** Fees of selling and postage. */
  readonly feesMinor: number
  /** Spent on no machine in particular. */
  readonly expensesMinor: number
  readonly writtenOffMinor: number
  readonly profitMinor: number
  /** Money in less money out. */
  readonly cashMinor: number
  /** By how much the stock at cost grew. */
  readonly machinesMinor: number
  readonly shelfMinor: number
  readonly minutes: number
  /** Profit by the hour; null where no time was noted. */
  readonly hourlyMinor: number | null
}

/** One line of what a figure is made of. */
export type MadeOf = { readonly name: string; readonly minor: number }

/** Figures with what the profit and the cash are made of: the lines of each add up to it. */
export type Period = Figures & { readonly profit: readonly MadeOf[]; readonly cash: readonly MadeOf[] }

/** The figures of these lines of one currency. */
export const periodOf = (months: readonly MonthLine[], traffic: readonly TrafficLine[], currency: Currency): Period => {
  const own = months.filter((line) => line.currency === currency)
  const moved = traffic.filter((line) => line.currency === currency)
  const of = (account: Account): number =>
    own.reduce((sum, line) => (line.account === account ? sum + line.minor : sum), 0)
  const salesMinor = -of('sales') || 0
  const [costOfSalesMinor, feesMinor, expensesMinor] = [of('cost-of-sales'), of('fees'), of('expenses')]
  const [writtenOffMinor, cashMinor] = [of('written-off'), of('cash')]
  const profitMinor = salesMinor - costOfSalesMinor - feesMinor - expensesMinor - writtenOffMinor
  const boughtMinor = moved.reduce((sum, line) => sum + line.paidMinor, 0)
  const minutes = own.reduce((sum, line) => sum + line.minutes, 0)
  return withLines({
    came: moved.reduce((sum, line) => sum + line.came, 0),
    left: moved.reduce((sum, line) => sum + line.left, 0),
    boughtMinor,
    // What went out of the purse and is nothing else.
    materialsMinor: salesMinor - cashMinor - boughtMinor - feesMinor - expensesMinor,
    salesMinor,
    costOfSalesMinor,
    feesMinor,
    expensesMinor,
    writtenOffMinor,
    profitMinor,
    cashMinor,
    machinesMinor: of('machines'),
    shelfMinor: of('shelf'),
    minutes,
    hourlyMinor: hourlyMinor(profitMinor, minutes),
  })
}

const withLines = (figures: Figures): Period => ({
  ...figures,
  profit: [
    { name: 'Sold', minor: figures.salesMinor },
    { name: 'What was sold had cost', minor: -figures.costOfSalesMinor || 0 },
    { name: 'Fees and postage', minor: -figures.feesMinor || 0 },
    { name: 'Spent on no machine', minor: -figures.expensesMinor || 0 },
    { name: 'Written off', minor: -figures.writtenOffMinor || 0 },
  ],
  cash: [
    { name: 'Sold', minor: figures.salesMinor },
    { name: 'Machines bought', minor: -figures.boughtMinor || 0 },
    { name: 'Parts, materials, fetching', minor: -figures.materialsMinor || 0 },
    { name: 'Fees and postage', minor: -figures.feesMinor || 0 },
    { name: 'Spent on no machine', minor: -figures.expensesMinor || 0 },
  ],
})
