import { moneyText } from '../../base/money.ts'
import type { MoneySum } from '../../base/money-sum.ts'
import type { BuyingView } from '../../machine/buying/index.ts'
import { Sum } from '../machine/sum.tsx'
import { Fold } from '../parts/fold.tsx'

/** The most to pay line by line, the quick formula beside it, and where the judgements come from. */
export const MadeOf = ({ view }: { readonly view: BuyingView }) => {
  const { currency, price, quick } = view
  const money = (minor: number): string => moneyText(minor, currency)
  const looks = price.conditionShare === 1 ? '' : `, its looks counted at ${Math.round(100 * price.conditionShare)} %`
  return (
    <>
      <Fold title="What is this made of?">
        <Sum sum={ceilingSum(view)} currency={currency} />
        <p className="quiet">
          Mended and cleaned it sells for about {money(price.medianMinor)}, nine times in ten {money(price.ninety[0])}{' '}
          to {money(price.ninety[1])}
          {looks}. Whoever knew the fault beforehand could pay {money(Math.max(0, view.ceiling.knowingMinor))}.
        </p>
      </Fold>
      <Fold title={`Quick formula: ${quick.ceilingMinor < 0 ? 'leave it' : money(quick.ceilingMinor)}`}>
        <p>{quick.text}</p>
        <table className="buy-quick">
          <thead>
            <tr>
              <th scope="col">Figure</th>
              <th scope="col">usual</th>
              <th scope="col">here</th>
            </tr>
          </thead>
          <tbody>
            {quick.differences.map(({ name, usual, planned, unit }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td className="figure">{unitText(usual, unit, money)}</td>
                <td className="figure">{unitText(planned, unit, money)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p className="hint">
          Chance of repair × (sale less fee, parts, cleaning, returns, hours) + the rest × (spares less hours) − way.
        </p>
      </Fold>
      <Fold title="Where the judgements come from">
        <ul>
          {view.sources.map((source) => (
            <li key={source}>{source}</li>
          ))}
        </ul>
      </Fold>
    </>
  )
}

const unitText = (value: number, unit: 'share' | 'minor' | 'hours', money: (minor: number) => string): string =>
  unit === 'minor' ? money(value) : unit === 'hours' ? `${value.toFixed(1)} h` : `${Math.round(100 * value)} %`

const ceilingSum = ({ ceiling, travel, wanted, hourMinor, effort }: BuyingView): MoneySum => {
  const wantedMinor = wanted.kind === 'profit' ? wanted.minor : 0
  const caution = ceiling.exactMinor - ceiling.onAverageMinor
  const rest = { kind: 'rest' as const }
  return {
    name: 'Most to pay',
    minor: ceiling.exactMinor,
    lines: [
      {
        name: 'What the best plan brings, own hours and parts paid',
        minor: ceiling.onAverageMinor + wantedMinor + travel.minor,
        basis: rest,
        sources: [0],
      },
      { name: `Driving ${Math.round(travel.km)} km`, minor: -travel.kmMinor, basis: rest, sources: [1] },
      {
        name: 'Own time on the way and at the door',
        minor: -travel.timeMinor,
        basis: { kind: 'product', factors: [{ kind: 'time', minutes: travel.minutes, hourMinor }] },
        sources: [1],
      },
      ...(wantedMinor === 0 ? [] : [{ name: 'Wanted profit', minor: -wantedMinor, basis: rest, sources: [2] }]),
      ...(Math.abs(caution) < 0.5
        ? []
        : [{ name: 'Caution: at most one in five may lose money', minor: caution, basis: rest, sources: [3] }]),
    ],
    sources: [
      `The plan of the machine’s own page, looking ${effort === 1 ? 'as far ahead' : 'less far ahead'}: checks, repairs and how it would leave, weighed by what is likely wrong`,
      'Your costs and your hour, in the settings',
      'What you want of the deal',
      'How the settings weigh risk',
    ],
  }
}
