import { useId, useState, type ReactNode } from 'react'
import { moneyText, type Currency } from '../../base/money.ts'
import type { WorthView } from '../../machine/view.ts'
import { exitNames } from '../words.ts'
import { useSheet } from './sheet.ts'

/** Always in sight: spent so far, worth as it stands, worth if you carry on, best exit. */
export const MoneyStrip = () => {
  const { document, view, stale } = useSheet()
  const { state } = document
  const money = (minor: number): string => moneyText(minor, state.currency)
  return (
    <dl className="strip" aria-label="Money" aria-busy={stale}>
      <Figure name="spent so far">{money(state.paidMinor + state.spentMinor)}</Figure>
      {state.left === null ? (
        <>
          <Figure name="as it stands">{view === null ? '…' : money(view.worth.asItStandsMinor)}</Figure>
          <Figure name="if you carry on">{view === null ? '…' : money(view.worth.carryOnMinor)}</Figure>
          <Figure name="best exit" words>
            {view === null ? '…' : exitNames[view.worth.bestExit].short}
          </Figure>
          {view === null ? null : <Certain worth={view.worth} currency={state.currency} />}
        </>
      ) : (
        <>
          <Figure name="received">{money(state.left.receivedMinor)}</Figure>
          <Figure name="profit">{money(state.left.profitMinor)}</Figure>
          <Figure name="left as" words>
            {exitNames[state.left.exit].short}
          </Figure>
        </>
      )}
    </dl>
  )
}

/** How far the plan's figure can be from the best there is; what both figures mean is one tap away. */
const Certain = ({ worth, currency }: { readonly worth: WorthView; readonly currency: Currency }) => {
  const [open, setOpen] = useState(false)
  const id = useId()
  const money = (minor: number): string => moneyText(minor, currency)
  const gap = money(Math.max(0, worth.upperMinor - worth.carryOnMinor))
  return (
    <div className={open ? 'strip-certain open' : 'strip-certain'}>
      <dt className="unseen">how sure that is</dt>
      <dd>
        <button type="button" aria-expanded={open} aria-controls={id} onClick={() => setOpen(!open)}>
          certain to within <span className="figure">{gap}</span>
        </button>
        <p id={id} hidden={!open}>
          {money(worth.carryOnMinor)} is what this plan brings on average, proved for the plan. Nobody could beat{' '}
          {money(worth.upperMinor)} on average, whatever they did next. The best there is lies between.
        </p>
      </dd>
    </div>
  )
}

type FigureProps = { readonly name: string; readonly children: ReactNode; readonly words?: boolean }

const Figure = ({ name, children, words = false }: FigureProps) => (
  <div>
    <dt>{name}</dt>
    <dd className={words ? 'strip-words' : 'figure'}>{children}</dd>
  </div>
)
