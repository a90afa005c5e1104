import type { ReactNode } from 'react'
import { moneyText } from '../../base/money.ts'
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

type FigureProps = { readonly name: string; readonly children: ReactNode; readonly words?: boolean }

const Figure = ({ name, children, words = false }: FigureProps) => (
  <div>
    <dt>{name}</dt>
    <dd className={words ? 'strip-words' : 'figure'}>{children}</dd>
  </div>
)
