import { useId, useState, type ReactNode } from 'react'
import { moneyText } from '../../base/money.ts'
import type { MoneySum } from '../../base/money-sum.ts'
import { sourceText } from '../../base/source-text.ts'
import { attitudes } from '../../facts/attitudes.ts'
import { Fold } from '../parts/fold.tsx'
import { Link } from '../router.tsx'
import { dayText, minutesText } from '../words.ts'
import { useSheet } from './sheet.ts'
import { Sum } from './sum.tsx'
import { ValueForm } from './value-form.tsx'

/** What it is worth each way, each figure with its grounds; the prices and the hour that are reckoned with, to be changed here. */
export const Grounds = () => {
  const { document, view } = useSheet()
  return (
    <Fold title="What it is worth" className="panel-fold">
      {view === null ? null : <Worths />}
      <h3>Reckoned with</h3>
      <Reckoned />
      {document.state.left === null && view !== null ? (
        <Fold title="Change prices or your hour">
          {/* A fresh form once a note has changed what is reckoned with. */}
          <ValueForm key={JSON.stringify([view.worth.prices, document.state.hourMinor])} worth={view.worth} />
        </Fold>
      ) : null}
    </Fold>
  )
}

const Worths = () => {
  const { document, view } = useSheet()
  if (view === null) return null
  const { worth, exits, next } = view
  const plan =
    next.kind === 'exit'
      ? 'nothing more to do'
      : `give or take ${moneyText(worth.spreadMinor, document.state.currency)}, about ${minutesText(worth.expectedMin)}`
  return (
    <ul className="worth-lines" aria-label="What it is worth">
      {next.sum === null ? null : <Worth name="If you carry on" more={plan} sum={next.sum} />}
      <Worth name="Repaired" more="before the work that gets it there" sum={worth.repairedSum} />
      {exits.map((exit) => (
        <Worth
          key={exit.id}
          name={exit.name}
          more={exit.missing.length === 0 ? 'as it stands' : `still missing: ${exit.missing.join(', ')}`}
          sum={exit.sum}
        />
      ))}
    </ul>
  )
}

type WorthProps = { readonly name: string; readonly more: string; readonly sum: MoneySum }

const Worth = ({ name, more, sum }: WorthProps) => {
  const { document } = useSheet()
  const [open, setOpen] = useState(false)
  const id = useId()
  return (
    <li>
      <button
        type="button"
        className="worth-line-head"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
      >
        <span>
          {name}
          <small>{more}</small>
        </span>
        <span className="figure">{moneyText(sum.minor, document.state.currency)}</span>
      </button>
      <div id={id} hidden={!open}>
        {open ? <Sum sum={sum} currency={document.state.currency} /> : null}
      </div>
    </li>
  )
}

const Reckoned = () => {
  const { blueprint, document, view } = useSheet()
  const { currency, hourMinor, hourSetAt, prices, plate } = document.state
  const { workingMinor, sparesMinor, source } = blueprint.worth
  const money = (minor: number): string => moneyText(minor, currency)
  const priced = (range: { readonly low: number; readonly high: number }, set: typeof prices.working): string =>
    set === null
      ? `${money(range.low)} to ${money(range.high)}`
      : `${money(set.minor)}, set by you on ${dayText(set.at)}; by the blueprint ${money(range.low)} to ${money(range.high)}`
  const parts = Object.entries(prices.parts)
  return (
    <dl className="account wide">
      <Line name="working and clean">{priced(workingMinor, prices.working)}</Line>
      <Line name="for spares or repair">{priced(sparesMinor, prices.spares)}</Line>
      {parts.map(([id, set]) => (
        <Line key={id} name={(blueprint.parts.find((part) => part.id === id)?.name ?? id).toLowerCase()}>
          {money(set.minor)}, set by you on {dayText(set.at)}
        </Line>
      ))}
      <Line name="the blueprint's prices">{sourceText(source)}</Line>
      <Line name="an hour of yours">
        {money(hourMinor)}, set on {dayText(hourSetAt)}
      </Line>
      {view === null ? null : (
        <Line name="risk">
          {attitudes[view.worth.attitude].name}
          {view.worth.risk === null
            ? '. '
            : `: it loses money when it brings less than ${money(view.worth.risk.belowMinor)} from here on. `}
          <Link to={{ kind: 'settings' }} className="on-its-own">
            Settings
          </Link>
        </Line>
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
  )
}

const Line = ({ name, children }: { readonly name: string; readonly children: ReactNode }) => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
)
