import { useState } from 'react'
import type { Currency } from '../../base/money.ts'
import type { BooksView } from '../../bench/books/books-view.ts'
import type { BenchId } from '../../bench/contract.ts'
import { BookFiles } from '../books/files.tsx'
import { ImportPast } from '../books/import-past.tsx'
import { OpenData } from '../books/open-data.tsx'
import { monthText } from '../books/month-words.ts'
import { Months } from '../books/months.tsx'
import { PeriodAccount } from '../books/period-account.tsx'
import { Spending } from '../books/spending.tsx'
import { TaxYears } from '../books/tax-years.tsx'
import { useBooks } from '../books/use-books.ts'
import { WhatPays } from '../books/what-pays.tsx'
import { Loading } from '../parts/loading.tsx'
import { Money } from '../parts/money.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Link, PageTitle } from '../router.tsx'
import '../style/books.css'

/** The account book: profit, hours, what an hour brought, what is tied up, what kind of machine pays. */
export const BooksPage = ({ bench }: { readonly bench: BenchId }) => {
  const { data, error } = useBooks(bench)
  return (
    <div className="sheet books">
      <PageTitle windowTitle={bench === 'demo' ? 'Demo books' : 'Books'}>
        {bench === 'demo' ? 'Books of the demo bench' : 'Books'}
      </PageTitle>
      <p>
        <Link to={{ kind: 'bench', bench }}>{bench === 'demo' ? 'Demo bench' : 'On the bench'}</Link>
      </p>
      {data === undefined ? <Loading what="the books" error={error} /> : <Account bench={bench} view={data} />}
    </div>
  )
}

const Account = ({ bench, view }: { readonly bench: BenchId; readonly view: BooksView }) => {
  const [chosen, setChosen] = useState<Currency>(view.currencies[0].currency)
  const books = view.currencies.find((one) => one.currency === chosen) ?? view.currencies[0]
  const { currency, inHand, thisMonth, thisYear, months } = books
  return (
    <>
      {view.currencies.length === 1 ? null : (
        <OneOf
          label="Currency"
          options={view.currencies.map((one) => ({ id: one.currency, name: one.currency }))}
          chosen={currency}
          onChange={setChosen}
        />
      )}
      <div className="periods">
        <PeriodAccount title={monthText(thisMonth.month)} period={thisMonth} currency={currency} />
        <PeriodAccount title={`Tax year ${thisYear.name}`} period={thisYear} currency={currency} />
      </div>
      <p className="tied-up">
        Tied up at cost: <Money minor={inHand.machinesMinor} currency={currency} /> in {inHand.machines}{' '}
        {inHand.machines === 1 ? 'machine' : 'machines'} in hand,{' '}
        <Money minor={inHand.shelfMinor} currency={currency} /> on the shelf.
      </p>
      <Months bench={bench} months={months} currency={currency} />
      <WhatPays books={books} method={view.paysMethod} />
      <Spending bench={bench} currency={currency} today={view.today} />
      <TaxYears books={books} note={view.note} />
      <BookFiles bench={bench} />
      <ImportPast bench={bench} />
      <OpenData bench={bench} />
    </>
  )
}
