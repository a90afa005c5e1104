import { moneyText, type Currency } from '../../base/money.ts'
import type { BooksView, CurrencyBooks, YearBooks, YearMargin } from '../../bench/books/books-view.ts'
import { Fold } from '../parts/fold.tsx'
import { AccountTable } from './account-table.tsx'
import { calendarDay } from './month-words.ts'

/** Tax years with the marks of the region, and margins: information only. */
export const TaxYears = ({ books, note }: { readonly books: CurrencyBooks; readonly note: BooksView['note'] }) => {
  const { years, currency, thisYear, margin } = books
  return (
    <section className="books-part" aria-label="Tax years">
      <h2>Tax years</h2>
      {years.length === 0 ? null : (
        <AccountTable
          caption="Tax year by tax year, the latest first"
          columns={['Year', 'Sold, before costs', 'Costs', 'Profit']}
          rows={years.map((year) => ({
            key: year.name,
            cells: [
              year.name,
              moneyText(year.salesMinor, currency),
              moneyText(year.salesMinor - year.profitMinor, currency),
              <strong key="profit">{moneyText(year.profitMinor, currency)}</strong>,
            ],
          }))}
        />
      )}
      <p className="tax-note">
        <strong>{note}.</strong> Costs are those of what was sold, with fees, spending and what was written off; what is
        still in hand is not counted yet.
      </p>
      <Fold title={`What to watch in ${thisYear.name}`}>
        <Marks year={thisYear} currency={currency} />
      </Fold>
      {margin === null ? null : (
        <Fold title={`Margins of ${margin.year}, for who is registered for VAT`}>
          <Margins margin={margin} currency={currency} />
        </Fold>
      )}
    </section>
  )
}

const Marks = ({ year, currency }: { readonly year: YearBooks; readonly currency: Currency }) => (
  <>
    <p className="hint">
      {calendarDay(year.from)} to {calendarDay(year.to)}
    </p>
    {year.marks.length === 0 ? <p>No marks are known here for this region.</p> : null}
    <ul className="marks">
      {year.marks.map((mark) => (
        <li key={mark.id}>
          <p>
            {mark.name}: <span className="figure">{mark.amount}</span>
          </p>
          {mark.takenMinor === null ? null : (
            <p>
              Taken so far: <strong className="figure">{moneyText(mark.takenMinor, currency)}</strong>
            </p>
          )}
          <p className="hint">
            {mark.asOf}. {mark.source}
          </p>
        </li>
      ))}
    </ul>
  </>
)

const Margins = ({ margin, currency }: { readonly margin: YearMargin; readonly currency: Currency }) => (
  <>
    <p>
      {margin.machines} sold, margins <strong className="figure">{moneyText(margin.marginMinor, currency)}</strong>
      {margin.vatMinor === null ? (
        '; each member state has its own rate, so no tax is worked out.'
      ) : (
        <>
          , VAT in them at {margin.ratePercent} %{' '}
          <strong className="figure">{moneyText(margin.vatMinor, currency)}</strong>.
        </>
      )}
    </p>
    {margin.latest.length === 0 ? null : (
      <AccountTable
        caption="Margins, the latest first"
        columns={['Machine', 'Sold on', 'Bought at', 'Sold at', 'Margin', 'VAT in it']}
        rows={margin.latest.map((line) => ({
          key: line.machine,
          cells: [
            line.name,
            calendarDay(line.soldDay),
            moneyText(line.purchaseMinor, currency),
            moneyText(line.saleMinor, currency),
            moneyText(line.marginMinor, currency),
            line.vatMinor === null ? '–' : moneyText(line.vatMinor, currency),
          ],
        }))}
      />
    )}
    <p className="hint">
      {margin.note} {margin.source}. Repairs are no part of the purchase price. The stock book below has every machine.
    </p>
  </>
)
