import { moneyText, type Currency } from '../../base/money.ts'
import type { MadeOf, Period } from '../../bench/books/figures.ts'
import { Fold } from '../parts/fold.tsx'
import { Money } from '../parts/money.tsx'
import { minutesText } from '../words.ts'

type PeriodAccountProps = { readonly title: string; readonly period: Period; readonly currency: Currency }

/** What a stretch of time brought, large, and what that is made of. */
export const PeriodAccount = ({ title, period, currency }: PeriodAccountProps) => (
  <section className="period" aria-label={title}>
    <h2>{title}</h2>
    <p className="period-profit">
      <span className="period-figure figure">{moneyText(period.profitMinor, currency)}</span> profit
    </p>
    <p className="period-more">
      {period.hourlyMinor === null ? (
        'No time noted.'
      ) : (
        <>
          <span className="figure">{moneyText(period.hourlyMinor, currency)}</span> an hour in{' '}
          <span className="figure">{minutesText(period.minutes)}</span>.
        </>
      )}{' '}
      {period.came} came, {period.left} left.
    </p>
    <Fold title="What is this made of?">
      <SumLines name="Profit" lines={period.profit} totalMinor={period.profitMinor} currency={currency} />
      <SumLines name="In the purse" lines={period.cash} totalMinor={period.cashMinor} currency={currency} />
    </Fold>
  </section>
)

type SumLinesProps = {
  readonly name: string
  readonly lines: readonly MadeOf[]
  readonly totalMinor: number
  readonly currency: Currency
}

/** Lines that add up to a total, ruled off as in an account book. */
const SumLines = ({ name, lines, totalMinor, currency }: SumLinesProps) => (
  <dl className="sum-lines">
    {lines
      .filter(({ minor }) => minor !== 0)
      .map((line) => (
        <div key={line.name}>
          <dt>{line.name}</dt>
          <dd>
            <Money minor={line.minor} currency={currency} />
          </dd>
        </div>
      ))}
    <div className="sum-total">
      <dt>{name}</dt>
      <dd>
        <Money minor={totalMinor} currency={currency} />
      </dd>
    </div>
  </dl>
)
