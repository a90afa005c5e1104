import { moneyText, type Currency } from '../../base/money.ts'
import { sourceText } from '../../base/source-text.ts'
import { itemMargins } from '../../engines/money/index.ts'
import { marginSchemes } from '../../facts/margin-scheme.ts'
import type { Region } from '../../facts/regions.ts'
import { taxMarks, taxNote, taxYearOf, taxYearStart, type TaxMark, type TaxYear } from '../../facts/tax-years.ts'
import type { MonthKind, SoldMachine } from '../ports.ts'

/** Months by which a region's tax year can be put together. */
export const monthKindOf = (region: Region): MonthKind => (taxYearStart[region].day === 6 ? 'from-6th' : 'calendar')

/** The tax year that a month of that region's kind lies in. */
export const yearOfMonth = (region: Region, month: string): TaxYear =>
  taxYearOf(region, `${month}-${String(taxYearStart[region].day).padStart(2, '0')}`)

/** A mark that a small trade may want to watch, as information. */
export type MarkView = {
  readonly id: string
  readonly name: string
  /** `£1000.00`, `5 years` */
  readonly amount: string
  /** What was taken so far against it, in the same currency; null where it is no amount of takings. */
  readonly takenMinor: number | null
  readonly minor: number | null
  readonly asOf: string
  readonly source: string
}

/**
 * The marks of a region against what was taken.
 * @param takenMinor before costs, in the tax year
 * @param twelveMonthsMinor before costs, in the twelve months up to the year's last month that has come
 */
export const marksOf = (
  region: Region,
  currency: Currency,
  takenMinor: number,
  twelveMonthsMinor: number,
): readonly MarkView[] =>
  taxMarks[region].map(({ id, name, amount, asOf, source }: TaxMark) => {
    const watched = amount.kind === 'money' && amount.currency === currency
    return {
      id,
      name,
      amount: amount.kind === 'money' ? moneyText(amount.minor, amount.currency) : `${amount.years} years`,
      takenMinor: watched ? (id.endsWith('threshold') ? twelveMonthsMinor : takenMinor) : null,
      minor: watched ? amount.minor : null,
      asOf,
      source: sourceText(source),
    }
  })

/** One machine in the stock book of a margin scheme. Repairs are no part of its purchase price. */
export type MarginLine = {
  readonly machine: string
  readonly name: string
  readonly boughtDay: string
  readonly soldDay: string
  readonly purchaseMinor: number
  readonly saleMinor: number
  readonly marginMinor: number
  /** The tax that would be in the margin; null where the rate is not known here. */
  readonly vatMinor: number | null
}

export type MarginView = {
  readonly lines: readonly MarginLine[]
  readonly marginMinor: number
  readonly vatMinor: number | null
  readonly ratePercent: number | null
  readonly note: string
  readonly source: string
}

/** Margins of the machines sold, as information for who is registered; null where the region has no scheme known here. */
export const marginOf = (region: Region, currency: Currency, sold: readonly SoldMachine[]): MarginView | null => {
  const scheme = marginSchemes[region]
  if (scheme === undefined) return null
  const rate = scheme.ratePercent
  const own = sold.filter((one) => one.currency === currency)
  const items = own.map(({ id, paidMinor, receivedMinor }) => ({
    id,
    purchaseMinor: paidMinor,
    saleMinor: receivedMinor,
  }))
  const margins = itemMargins(items, rate ?? 0)
  const lines = own.map((one, i): MarginLine => ({
    machine: one.id,
    name: one.name,
    boughtDay: one.boughtDay,
    soldDay: one.soldDay,
    purchaseMinor: one.paidMinor,
    saleMinor: one.receivedMinor,
    marginMinor: margins[i]?.marginMinor ?? 0,
    vatMinor: rate === null ? null : (margins[i]?.vatMinor ?? 0),
  }))
  return {
    lines,
    marginMinor: lines.reduce((sum, { marginMinor }) => sum + marginMinor, 0),
    vatMinor: rate === null ? null : lines.reduce((sum, { vatMinor }) => sum + (vatMinor ?? 0), 0),
    ratePercent: rate,
    note: taxNote(region, scheme.asOf),
    source: sourceText(scheme.source),
  }
}
