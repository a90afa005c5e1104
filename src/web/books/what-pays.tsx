import { useState } from 'react'
import { moneyText, type Currency } from '../../base/money.ts'
import type { BooksView, CurrencyBooks } from '../../bench/books/books-view.ts'
import type { PaysBy, PaysLine } from '../../bench/books/what-pays.ts'
import { OneOf } from '../parts/one-of.tsx'
import { minutesText } from '../words.ts'
import { AccountTable } from './account-table.tsx'

const byNames: readonly { readonly id: PaysBy; readonly name: string }[] = [
  { id: 'blueprint', name: 'Kind' },
  { id: 'complaint', name: 'Complaint' },
  { id: 'source', name: 'Where from' },
]

type WhatPaysProps = { readonly books: CurrencyBooks; readonly method: BooksView['paysMethod'] }

/** What kind of machine pays, by what it is, what it was said to do, and where it came from. */
export const WhatPays = ({ books: { pays, currency }, method }: WhatPaysProps) => {
  const [by, setBy] = useState<PaysBy>('blueprint')
  const lines = pays.find((one) => one.by === by)?.lines ?? []
  return (
    <section className="books-part" aria-label="What pays">
      <h2>What pays</h2>
      <OneOf label="Told apart by" options={byNames} chosen={by} onChange={setBy} hideLabel />
      {lines.length === 0 ? (
        <p>No machine has left yet.</p>
      ) : (
        <>
          <AccountTable
            caption="What machines that left have brought"
            columns={['What', 'Profit each', 'Likely next', 'Time each', 'An hour', 'At a loss']}
            rows={lines.map((line) => ({ key: line.key, cells: cellsOf(line, currency) }))}
          />
          <p className="hint">{method}.</p>
        </>
      )}
    </section>
  )
}

const cellsOf = (line: PaysLine, currency: Currency) =>
  [
    <span key="name">
      {line.name}{' '}
      <span className="pays-count">
        {line.few ? 'only ' : ''}
        {line.machines}
      </span>
    </span>,
    <strong key="each">{moneyText(line.profitEachMinor, currency)}</strong>,
    moneyText(line.likelyEachMinor, currency),
    minutesText(line.minutesEach),
    line.hourlyMinor === null ? '–' : moneyText(line.hourlyMinor, currency),
    `${line.atLoss} of ${line.machines}`,
  ] as const
