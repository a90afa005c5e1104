import { moneyText } from '../../base/money.ts'
import type { Calibration, Compared } from '../../bench/adverts/compared.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { minutesText } from '../words.ts'
import { timesText } from './buy-words.ts'

type ComparedProps = { readonly compared: Compared; readonly blueprint: Blueprint | undefined }

/** One advert's guess against what came of it. */
export const HowCompared = ({ compared, blueprint }: ComparedProps) => {
  const money = (minor: number): string => moneyText(minor, compared.currency)
  const { guessedMinor, gotMinor, guessedMin, gotMin, spreadMinor, lossChance, lost, found, foreseen } = compared
  const names = found.map((id) => blueprint?.faults.find((fault) => fault.id === id)?.name ?? id)
  return (
    <section aria-label="How the guess compared">
      <h3>How the guess compared</h3>
      <table className="buy-quick">
        <thead>
          <tr>
            <th scope="col">above own hours</th>
            <th scope="col">guessed</th>
            <th scope="col">came to</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Profit</th>
            <td className="figure">{money(guessedMinor)}</td>
            <td className="figure">{money(gotMinor)}</td>
          </tr>
          <tr>
            <th scope="row">Time in all</th>
            <td className="figure">{minutesText(guessedMin)}</td>
            <td className="figure">{minutesText(gotMin)}</td>
          </tr>
        </tbody>
      </table>
      <p>
        {Math.abs(gotMinor - guessedMinor) <= spreadMinor
          ? `Within the spread of the guess, ${money(spreadMinor)}.`
          : `Further off than the spread of the guess, ${money(spreadMinor)}.`}{' '}
        A loss was foretold {timesText(lossChance)}; {lost ? 'it lost money' : 'it lost none'}. The price was{' '}
        {compared.belowCeiling ? 'no more than' : 'above'} the most to pay.{' '}
        {foreseen === null
          ? 'What was wrong with it was not written down.'
          : `${names.join(', ')}: ${foreseen ? 'among the three likely faults' : 'not among the three likely faults'}.`}
      </p>
    </section>
  )
}

/** All bought and gone together, a line for each currency. */
export const CalibrationLines = ({ all }: { readonly all: readonly Calibration[] }) => (
  <>
    {all.map((one) => (
      <p key={one.currency}>
        {one.count} bought and gone: guessed {moneyText(one.guessedMinor, one.currency)} on average, came to{' '}
        {moneyText(one.gotMinor, one.currency)}. Losses foretold {one.lossesForetold.toFixed(1)}, came {one.losses}
        {one.byChance
          .filter(({ count }) => count > 0)
          .map(({ atMost, count, losses }) =>
            atMost < 1 ? ` (under 1 in 4: ${losses} of ${count}` : ` (1 in 4 or more: ${losses} of ${count}`,
          )
          .map((text) => `${text})`)
          .join('')}
        . Fault among the likely three: {one.foreseen} of {one.faultKnown}.
      </p>
    ))}
  </>
)
