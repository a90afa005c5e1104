import { axisX, axisY, plot, rectY, ruleY } from '@observablehq/plot'
import { useLayoutEffect, useRef } from 'react'
import type { MonthBooks } from '../../bench/books/books-view.ts'
import { moneyText, type Currency } from '../../base/money.ts'
import { useWidth } from '../use-width.ts'
import { monthText } from './month-words.ts'

/** Profit month by month as a hairline drawing. The table under it holds the figures. */
export const MonthChart = ({
  months,
  currency,
}: {
  readonly months: readonly MonthBooks[]
  readonly currency: Currency
}) => {
  const frame = useRef<HTMLDivElement>(null)
  const width = useWidth(frame)
  useLayoutEffect(() => {
    const picture = drawn(months, width)
    // The page's policy lets no style sheet into a drawing; its few rules stand in books.css.
    picture.querySelector('style')?.remove()
    picture.setAttribute('aria-hidden', 'true')
    frame.current?.replaceChildren(picture)
  }, [months, width])
  const best = months.reduce((one, other) => (other.profitMinor > one.profitMinor ? other : one))
  const words = `Profit by month; most in ${monthText(best.month)}, ${moneyText(best.profitMinor, currency)}`
  return <div ref={frame} className="month-chart" role="img" aria-label={words} />
}

/** Months drawn at most; the table has all. */
const mostDrawn = 24

const drawn = (months: readonly MonthBooks[], width: number) => {
  const bars = months
    .slice(0, mostDrawn)
    .toReversed()
    .map(({ month, profitMinor }) => ({
      from: new Date(`${month}-03T00:00:00Z`),
      to: new Date(`${month}-28T00:00:00Z`),
      major: profitMinor / 100,
    }))
  return plot({
    className: 'month-plot',
    width,
    height: 130,
    marginLeft: 46,
    marginRight: 8,
    marginTop: 10,
    marginBottom: 26,
    x: { type: 'utc' },
    y: { nice: true },
    marks: [
      axisX({ label: null, ticks: Math.max(2, Math.round(width / 110)), tickSize: 0 }),
      axisY({ label: null, ticks: 3, tickSize: 4 }),
      rectY(bars, { x1: 'from', x2: 'to', y: 'major', stroke: 'var(--ink)', fill: 'var(--ink)', fillOpacity: 0.16 }),
      ruleY([0], { stroke: 'var(--ink)' }),
    ],
  })
}
