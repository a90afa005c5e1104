import { moneyText, type Currency } from '../../base/money.ts'
import { basisText, type MoneyLine, type MoneySum } from '../../base/money-sum.ts'
import '../style/sum.css'

type SumProps = { readonly sum: MoneySum; readonly currency: Currency }

/** A figure line by line, with what each line rests on beneath. */
export const Sum = ({ sum, currency }: SumProps) => (
  <div className="sum">
    <ul className="sum-lines" aria-label={`${sum.name}, line by line`}>
      {sum.lines.map((line, at) => (
        <Line key={`${at} ${line.name}`} line={line} currency={currency} />
      ))}
      <li className="sum-total">
        <span>{sum.name}</span>
        <span className="figure">{moneyText(sum.minor, currency)}</span>
      </li>
    </ul>
    <ol className="sum-sources" aria-label="What the lines rest on">
      {sum.sources.map((source) => (
        <li key={source}>{source}</li>
      ))}
    </ol>
  </div>
)

const Line = ({ line, currency }: { readonly line: MoneyLine; readonly currency: Currency }) => {
  const how = basisText(line.basis, currency)
  return (
    <li>
      <span>
        {line.name}
        <sup>
          <span className="unseen">rests on </span>
          {line.sources.map((source) => source + 1).join(' ')}
        </sup>
        {how === '' ? null : <span className="sum-how">{how}</span>}
      </span>
      <span className="figure">{moneyText(line.minor, currency)}</span>
    </li>
  )
}
