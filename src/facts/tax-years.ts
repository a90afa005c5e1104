import type { Currency } from '../base/money.ts'
import type { Source } from '../base/source.ts'
import { regionNames, type Region } from './regions.ts'

/** Tax is shown as information only; every text that names it says so. */
export const notAdvice = 'Information, not advice: ask an adviser'

/** `Information, not advice: ask an adviser. The United Kingdom, as of 2026.` */
export const taxNote = (region: Region, asOf: string): string => {
  const name = regionNames[region]
  return `${notAdvice}. ${name[0].toUpperCase()}${name.slice(1)}, as of ${asOf}.`
}

type TaxYearStart = { readonly month: number; readonly day: number; readonly source: Source }

const memory = (title: string, clause: string, edition?: string): Source => ({
  title,
  ...(edition === undefined ? {} : { edition }),
  clause,
  evidence: 'from memory',
})

const calendarYear = (title: string): TaxYearStart => ({
  month: 1,
  day: 1,
  source: memory(title, 'the calendar year'),
})

/** When the tax year of a person who trades begins. */
export const taxYearStart: Readonly<Record<Region, TaxYearStart>> = {
  UK: { month: 4, day: 6, source: memory('HMRC, Self Assessment', '6 April to 5 April') },
  EU: calendarYear('Most member states; ask in yours'),
  AU: { month: 7, day: 1, source: memory('Australian Taxation Office, income year', '1 July to 30 June') },
  NZ: { month: 4, day: 1, source: memory('Inland Revenue, tax year', '1 April to 31 March') },
  US: calendarYear('Internal Revenue Service, tax year of most individuals'),
  CA: calendarYear('Canada Revenue Agency, tax year of individuals'),
}

/** What a small trade may want to watch. An amount in minor units a year, or years to keep records. */
export type TaxMark = {
  readonly id: string
  readonly name: string
  readonly amount:
    | { readonly kind: 'money'; readonly minor: number; readonly currency: Currency }
    | { readonly kind: 'years'; readonly years: number }
  /** The year that the figure is known for. */
  readonly asOf: string
  readonly source: Source
}

const money = (major: number, currency: Currency) => ({ kind: 'money', minor: major * 100, currency }) as const
const years = (count: number) => ({ kind: 'years', years: count }) as const

/** Thresholds and how long to keep records, where they are known. */
export const taxMarks: Readonly<Record<Region, readonly TaxMark[]>> = {
  UK: [
    {
      id: 'trading-allowance',
      name: 'Trading allowance: takings before costs in a tax year above which HMRC is to be told',
      amount: money(1000, 'GBP'),
      asOf: '2026/27',
      source: {
        title: 'Low Incomes Tax Reform Group, Selling online: make sure you keep clear records',
        edition: '2026',
        evidence: 'retrieved',
      },
    },
    {
      id: 'vat-threshold',
      name: 'VAT: taxable takings in twelve months above which one must register',
      amount: money(90_000, 'GBP'),
      asOf: '2024 on',
      source: memory('HMRC, VAT registration threshold', 'from 1 April 2024'),
    },
    {
      id: 'income-records',
      name: 'Income: years to keep records after the 31 January deadline',
      amount: years(5),
      asOf: '2026/27',
      source: memory('HMRC, Self Assessment', 'records of the self-employed'),
    },
    {
      id: 'margin-scheme-records',
      name: 'VAT margin scheme: years to keep stock book and invoices',
      amount: years(6),
      asOf: '2026',
      source: { title: 'HMRC internal manual, VAT Margin Schemes', clause: 'VATMARG02200', evidence: 'retrieved' },
    },
  ],
  EU: [],
  AU: [
    {
      id: 'gst-threshold',
      name: 'GST: takings in twelve months from which one must register',
      amount: money(75_000, 'AUD'),
      asOf: '2024–25',
      source: memory('Australian Taxation Office, registering for GST', 'turnover of A$75,000 or more'),
    },
    {
      id: 'records',
      name: 'Years to keep records',
      amount: years(5),
      asOf: '2024–25',
      source: memory('Australian Taxation Office, record keeping', 'five years'),
    },
  ],
  NZ: [
    {
      id: 'gst-threshold',
      name: 'GST: takings in twelve months above which one must register',
      amount: money(60_000, 'NZD'),
      asOf: '2024',
      source: memory('Inland Revenue, registering for GST', 'over NZ$60,000'),
    },
    {
      id: 'records',
      name: 'Years to keep records',
      amount: years(7),
      asOf: '2024',
      source: memory('Inland Revenue, record keeping', 'seven years'),
    },
  ],
  US: [
    {
      id: 'records',
      name: 'Years to keep records of income, in the usual case',
      amount: years(3),
      asOf: '2024',
      source: memory('Internal Revenue Service, how long to keep records', 'three years; longer in some cases'),
    },
  ],
  CA: [
    {
      id: 'gst-threshold',
      name: 'GST/HST: takings in four quarters above which one is no small supplier',
      amount: money(30_000, 'CAD'),
      asOf: '2024',
      source: memory('Canada Revenue Agency, small supplier', 'over C$30,000'),
    },
    {
      id: 'records',
      name: 'Years to keep records after the end of the tax year',
      amount: years(6),
      asOf: '2024',
      source: memory('Canada Revenue Agency, keeping records', 'six years'),
    },
  ],
}

/** A tax year: its first and last day, and what it is called. */
export type TaxYear = { readonly from: string; readonly to: string; readonly name: string }

/**
 * The tax year that a day falls in.
 * @param day `2026-03-14`
 * @returns first and last day, and a name: `2025/26`, or `2026` where it is the calendar year
 */
export const taxYearOf = (region: Region, day: string): TaxYear => {
  const start = taxYearStart[region]
  const year = Number(day.slice(0, 'yyyy'.length))
  const begins = dayText(year, start)
  const first = day < begins ? year - 1 : year
  return {
    from: dayText(first, start),
    to: dayBefore(dayText(first + 1, start)),
    name: start.month === 1 ? String(first) : `${first}/${String(first + 1).slice(2)}`,
  }
}

const dayText = (year: number, { month, day }: TaxYearStart): string =>
  `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`

const msPerDay = 86_400_000

const dayBefore = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) - msPerDay).toISOString().slice(0, 10)
