import { moneyText, type Currency } from '../base/money.ts'
import { problemText } from '../base/problem.ts'
import type { BooksView, CurrencyBooks, MonthBooks, YearBooks, YearMargin } from '../bench/books/books-view.ts'
import type { Period } from '../bench/books/figures.ts'
import type { PaysLine } from '../bench/books/what-pays.ts'
import type { ImportOutcome } from '../bench/books/import/import-books.ts'

/** The books as lines of text. `year`: only this tax year, by its name. */
export const booksLines = (view: BooksView, year?: string): readonly string[] => [
  ...view.currencies.flatMap((books) =>
    year === undefined ? wholeLines(books, view) : yearOnly(books, year.replace('-', '/')),
  ),
  view.note,
]

const wholeLines = (books: CurrencyBooks, view: BooksView): readonly string[] => {
  const { currency, inHand, thisMonth, thisYear } = books
  return [
    `Books in ${currency}`,
    `This month (${thisMonth.month}): ${shortLine(thisMonth, currency)}`,
    `This tax year (${thisYear.name}): ${shortLine(thisYear, currency)}`,
    `In all: ${shortLine(books.all, currency)}`,
    `Tied up: ${moneyText(inHand.machinesMinor, currency)} in ${inHand.machines} machines in hand, ${moneyText(inHand.shelfMinor, currency)} on the shelf`,
    '',
    ...books.all.profit.map(({ name, minor }) => `  ${name}: ${moneyText(minor, currency)}`),
    '',
    ...books.months.map((month) => monthLine(month, currency)),
    ...books.pays.flatMap(({ by, lines }) =>
      lines.length === 0 ? [] : ['', byNames[by], ...lines.map((line) => paysLine(line, currency))],
    ),
    ...(books.pays.some(({ lines }) => lines.length > 0) ? ['', view.paysMethod] : []),
    '',
    ...yearLines(thisYear, books),
    '',
  ]
}

const byNames = { blueprint: 'What pays, by kind', complaint: 'By complaint', source: 'By where it came from' } as const

const shortLine = (period: Period, currency: Currency): string =>
  `profit ${moneyText(period.profitMinor, currency)}, ${hoursText(period.minutes)}${period.hourlyMinor === null ? '' : `, ${moneyText(period.hourlyMinor, currency)} an hour`}, sold ${moneyText(period.salesMinor, currency)}`

const hoursText = (minutes: number): string => `${(minutes / 60).toFixed(1)} h`

const monthLine = (month: MonthBooks, currency: Currency): string =>
  `${month.month}: ${shortLine(month, currency)}; ${month.came} came, ${month.left} left; stock ${moneyText(month.stockAtEndMinor, currency)}`

const paysLine = (line: PaysLine, currency: Currency): string =>
  `  ${line.name}: ${line.few ? 'only ' : ''}${line.machines}, profit each ${moneyText(line.profitEachMinor, currency)}, likely for the next ${moneyText(line.likelyEachMinor, currency)}, ${hoursText(line.minutesEach)} each${line.hourlyMinor === null ? '' : `, ${moneyText(line.hourlyMinor, currency)} an hour`}, ${line.atLoss} of ${line.machines} at a loss`

const yearOnly = (books: CurrencyBooks, name: string): readonly string[] => {
  const year = books.years.find((one) => one.name === name)
  return year === undefined
    ? [`${books.currency}: nothing moved in the tax year ${name}`]
    : [
        ...yearLines(year, books),
        ...year.profit.map(({ name: what, minor }) => `  ${what}: ${moneyText(minor, books.currency)}`),
      ]
}

const yearLines = (year: YearBooks, { currency, margin }: CurrencyBooks): readonly string[] => [
  `Tax year ${year.name}, ${year.from} to ${year.to}: ${shortLine(year, currency)}`,
  ...year.marks.map(
    ({ name, amount, takenMinor, asOf, source }) =>
      `  ${name}: ${amount}${takenMinor === null ? '' : `; taken so far ${moneyText(takenMinor, currency)}`} (${asOf}; ${source})`,
  ),
  ...(margin?.year === year.name ? marginLines(margin, currency) : []),
]

const marginLines = (margin: YearMargin, currency: Currency): readonly string[] => [
  `  Second-hand margin scheme, for who is registered: ${margin.machines} sold, margins ${moneyText(margin.marginMinor, currency)}${margin.vatMinor === null ? '' : `, VAT in them at ${margin.ratePercent} % ${moneyText(margin.vatMinor, currency)}`}. ${margin.note} ${margin.source}`,
]

/** What an import did, as lines of text. */
export const importLines = (outcome: Extract<ImportOutcome, { kind: 'imported' }>): readonly string[] => [
  `Taken in: ${outcome.imported}. There already: ${outcome.already}.`,
  ...(outcome.unread.length === 0 ? [] : [`Columns that are not read: ${outcome.unread.join(', ')}`]),
  ...(outcome.leftOut.length === 0 ? [] : ['Left out:', ...outcome.leftOut.map(problemText)]),
]
