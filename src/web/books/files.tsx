import type { BenchId } from '../../bench/contract.ts'

const files: readonly (readonly [string, string])[] = [
  ['machines', 'Machines, each with what it cost and brought'],
  ['ledger', 'Ledger: every line of the books'],
  ['shelf', 'Parts of the shelf'],
  ['prices', 'Prices seen'],
  ['expenses', 'Spent on no machine'],
  ['stock-book', 'Stock book of a second-hand margin scheme'],
]

/** The books as files for a spreadsheet. */
export const BookFiles = ({ bench }: { readonly bench: BenchId }) => (
  <section className="books-part" aria-label="Take the books away">
    <h2>Take the books away</h2>
    <p className="hint">Files for any spreadsheet, CSV.</p>
    <ul className="files">
      {files.map(([name, what]) => (
        <li key={name}>
          <a href={`/api/bench/${bench}/books/${name}.csv`} download>
            {what}
          </a>
        </li>
      ))}
    </ul>
  </section>
)
