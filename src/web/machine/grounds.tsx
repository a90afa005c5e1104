import type { ReactNode } from 'react'
import { sourceText } from '../../base/source-text.ts'
import { moneyText } from '../../base/money.ts'
import { Fold } from '../parts/fold.tsx'
import { Link } from '../router.tsx'
import { minutesText } from '../words.ts'
import { useSheet } from './sheet.ts'

/** What the money rests on: the prices' source, the hour's worth, the spread, each exit. */
export const Grounds = () => {
  const { blueprint, document, view } = useSheet()
  const { currency, hourMinor, plate } = document.state
  const { workingMinor, sparesMinor, source } = blueprint.worth
  const money = (minor: number): string => moneyText(minor, currency)
  return (
    <Fold title="What the money rests on" className="panel-fold">
      <dl className="account wide">
        <Line name="working and clean">
          {money(workingMinor.low)} to {money(workingMinor.high)}
        </Line>
        <Line name="for spares or repair">
          {money(sparesMinor.low)} to {money(sparesMinor.high)}
        </Line>
        <Line name="these prices">{sourceText(source)}</Line>
        <Line name="an hour of yours">{money(hourMinor)}</Line>
        {view === null ? null : (
          <>
            <Line name="if you carry on">
              {money(view.worth.carryOnMinor)}, give or take {money(view.worth.spreadMinor)}, and about{' '}
              {minutesText(view.worth.expectedMin)}
            </Line>
            <Line name="knowing the fault at once">at most {money(view.worth.upperMinor)}</Line>
            {view.exits.map((exit) => (
              <Line key={exit.id} name={exit.name}>
                {money(exit.expectedMinor)}
                {exit.missing.length === 0 ? null : ` (still missing: ${exit.missing.join(', ')})`}
              </Line>
            ))}
          </>
        )}
        <Line name="plate">
          {plate.voltageV} V, {plate.frequencyHz} Hz, {plate.powerW} W, class {plate.protectionClass}
          {plate.massKg === undefined ? null : `, ${plate.massKg} kg`}
        </Line>
        <Line name="blueprint">
          <Link to={{ kind: 'blueprint', id: blueprint.id }} className="on-its-own">
            {blueprint.name}
          </Link>
        </Line>
      </dl>
    </Fold>
  )
}

const Line = ({ name, children }: { readonly name: string; readonly children: ReactNode }) => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
)
