import { lazy, Suspense, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyText, type Currency } from '../../base/money.ts'
import type { MonthBooks } from '../../bench/books/books-view.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { LedgerLine } from '../../bench/ports.ts'
import { Fold } from '../parts/fold.tsx'
import { Loading } from '../parts/loading.tsx'
import { Select } from '../parts/select.tsx'
import { minutesText } from '../words.ts'
import { AccountTable } from './account-table.tsx'
import { calendarDay, monthText } from './month-words.ts'
import { useBookLines } from './use-books.ts'

const MonthChart = lazy(async () => ({ default: (await import('./month-chart.tsx')).MonthChart }))

type MonthsProps = { readonly bench: BenchId; readonly months: readonly MonthBooks[]; readonly currency: Currency }

/** Months shown before more are asked for. */
const atFirst = 12

/** The months as a ruled table with a small drawing above, and the lines that each is made of. */
export const Months = ({ bench, months, currency }: MonthsProps) => {
  const [shown, setShown] = useState(atFirst)
  if (months.length === 0) return <p>Nothing has been bought, spent or sold yet.</p>
  return (
    <section className="books-part" aria-label="Months">
      <h2>Months</h2>
      {months.length < 2 ? null : (
        <Suspense fallback={<div className="month-chart" />}>
          <MonthChart months={months} currency={currency} />
        </Suspense>
      )}
      <AccountTable
        caption="Month by month, the latest first"
        columns={['Month', 'Sold', 'Profit', 'Time', 'An hour', 'Stock']}
        rows={months.slice(0, shown).map((one) => ({
          key: one.month,
          cells: [
            monthText(one.month),
            moneyText(one.salesMinor, currency),
            <strong key="profit">{moneyText(one.profitMinor, currency)}</strong>,
            minutesText(one.minutes),
            one.hourlyMinor === null ? '–' : moneyText(one.hourlyMinor, currency),
            moneyText(one.stockAtEndMinor, currency),
          ],
        }))}
      />
      {shown >= months.length ? null : (
        <Button className="key" onPress={() => setShown(months.length)}>
          All {months.length} months
        </Button>
      )}
      <Fold title="Lines of a month">
        <MonthLines bench={bench} months={months} currency={currency} />
      </Fold>
    </section>
  )
}

/** Lines shown at most; the file of the ledger has all. */
const mostLines = 200

const MonthLines = ({ bench, months, currency }: MonthsProps) => {
  const [month, setMonth] = useState(months[0]?.month ?? '')
  const { data, error } = useBookLines(bench, { months: 'calendar', month, currency, limit: mostLines })
  return (
    <>
      <Select label="Month" value={month} onChange={setMonth}>
        {months.map((one) => (
          <option key={one.month} value={one.month}>
            {monthText(one.month)}
          </option>
        ))}
      </Select>
      {data === undefined ? <Loading what="the lines" error={error} /> : <Lines {...data} currency={currency} />}
    </>
  )
}

type LinesProps = { readonly lines: readonly LedgerLine[]; readonly total: number; readonly currency: Currency }

const Lines = ({ lines, total, currency }: LinesProps) => (
  <>
    <AccountTable
      caption="Lines of the books"
      columns={['For', 'Day', 'Account', 'Amount']}
      rows={lines.map((line, i) => ({
        key: `${line.note} ${i}`,
        cells: [
          line.label,
          calendarDay(line.day),
          accountNames[line.account],
          line.account === 'minutes' ? minutesText(line.minutes) : moneyText(line.minor, currency),
        ],
      }))}
    />
    <p className="hint">
      What comes into an account is above zero, what leaves it below; the lines of each note add up to nothing.{' '}
      {total > lines.length ? `These are ${lines.length} of ${total}; the ledger file has all.` : ''}
    </p>
  </>
)

const accountNames: Readonly<Record<LedgerLine['account'], string>> = {
  cash: 'purse',
  machines: 'machines in hand',
  shelf: 'shelf',
  sales: 'sales',
  'cost-of-sales': 'cost of what was sold',
  fees: 'fees and postage',
  expenses: 'spending',
  'written-off': 'written off',
  minutes: 'time',
}
