import type { AskingView, ImprovementView } from '../../machine/asking.ts'
import { moneyText } from '../../base/money.ts'
import { Fold } from '../parts/fold.tsx'
import { minutesText } from '../words.ts'

type ImprovementsProps = {
  readonly asking: AskingView
  readonly isOn: (id: string) => boolean
  readonly onTick: (id: string, on: boolean) => void
}

/** What each thing that can be done adds, with a tick that moves the price. */
export const Improvements = ({ asking, isOn, onTick }: ImprovementsProps) => (
  <section className="panel" aria-label="What each thing adds">
    <h2>What each thing adds</h2>
    <ul className="asking-improvements">
      {asking.improvements.map((one) => (
        <li key={one.id}>
          <label>
            <input type="checkbox" checked={isOn(one.id)} onChange={(event) => onTick(one.id, event.target.checked)} />
            <span>
              <strong>{one.name}</strong>
              <span className="asking-gain">{gainText(one, asking)}</span>
            </span>
          </label>
        </li>
      ))}
    </ul>
    <Fold title="Where these come from">
      <ul>
        {asking.improvements.map(({ id, name, source }) => (
          <li key={id}>
            {name}: {source}
          </li>
        ))}
      </ul>
    </Fold>
  </section>
)

const gainText = (
  { gainMinor, costMinor, minutes, perMinuteMinor }: ImprovementView,
  { currency }: AskingView,
): string =>
  [
    `${moneyText(gainMinor, currency)} more`,
    `costs ${moneyText(costMinor, currency)}${minutes === 0 ? '' : ` and ${minutesText(minutes)}`}`,
    ...(perMinuteMinor === null ? [] : [`${moneyText(perMinuteMinor, currency)} a minute`]),
  ].join(' · ')
