import { useEffect, useId, useRef, useState, type ReactNode } from 'react'
import { moneyText, type Currency } from '../../base/money.ts'
import type { MachineView } from '../../machine/view.ts'
import { exitNames, lossText } from '../words.ts'
import { useSheet } from './sheet.ts'
import { Sum } from './sum.tsx'

/** Which figure is being asked why. */
type Asked = 'spent' | 'as-it-stands' | 'carry-on' | 'certain'

/** Always in sight: spent so far, worth as it stands, worth if you carry on, best exit. A tap on a figure opens its grounds. */
export const MoneyStrip = () => {
  const { document, view, stale } = useSheet()
  const [asked, setAsked] = useState<Asked | null>(null)
  const id = useId()
  const strip = useRef<HTMLDListElement>(null)
  const { state } = document
  // Opened, the strip stands still at the top of the page; whoever asked from further down is taken there.
  useEffect(() => {
    if (asked !== null) strip.current?.scrollIntoView({ block: 'nearest' })
  }, [asked])
  const money = (minor: number): string => moneyText(minor, state.currency)
  const why = (what: Asked): WhyProps => ({
    id,
    isOpen: asked === what,
    onToggle: () => setAsked((before) => (before === what ? null : what)),
  })
  return (
    <dl ref={strip} className={asked === null ? 'strip' : 'strip asked'} aria-label="Money" aria-busy={stale}>
      <Figure name="spent so far" why={why('spent')}>
        {money(state.paidMinor + state.spentMinor)}
      </Figure>
      {state.left === null ? (
        <>
          <Figure name="as it stands" why={view === null ? null : why('as-it-stands')}>
            {view === null ? '…' : money(view.worth.asItStandsMinor)}
          </Figure>
          <Figure name="if you carry on" why={view === null ? null : why('carry-on')}>
            {view === null ? '…' : money(view.worth.carryOnMinor)}
          </Figure>
          <Figure name="best exit" words>
            {view === null ? '…' : exitNames[view.worth.bestExit].short}
          </Figure>
          {view === null ? null : <Certain view={view} currency={state.currency} why={why('certain')} />}
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
      {asked === null ? null : (
        <div className="strip-why" id={id}>
          <dt className="unseen">why</dt>
          <dd>
            <Why asked={asked} />
          </dd>
        </div>
      )}
    </dl>
  )
}

type WhyProps = { readonly id: string; readonly isOpen: boolean; readonly onToggle: () => void }

const Why = ({ asked }: { readonly asked: Asked }) => {
  const { document, view } = useSheet()
  if (asked === 'spent') return <Spent />
  if (view === null) return null
  const { currency } = document.state
  switch (asked) {
    case 'as-it-stands': {
      const exit = view.exits.find(({ id }) => id === view.worth.bestExit)
      return exit === undefined ? null : <Sum sum={exit.sum} currency={currency} />
    }
    case 'carry-on':
      return <CarryOn view={view} currency={currency} />
    case 'certain':
      return <HowSure view={view} currency={currency} />
  }
}

/** The notes that cost money, as they read. */
const Spent = () => {
  const { lines } = useSheet().document
  const costing = lines.filter(({ kind, struck }) => !struck && ['added', 'spent', 'repaired'].includes(kind))
  return (
    <ul>
      {costing.map(({ id, text }) => (
        <li key={id}>{text}</li>
      ))}
    </ul>
  )
}

type ViewProps = { readonly view: MachineView; readonly currency: Currency }

const CarryOn = ({ view: { worth, next }, currency }: ViewProps) => {
  const money = (minor: number): string => moneyText(minor, currency)
  return (
    <>
      {next.sum === null ? null : <Sum sum={next.sum} currency={currency} />}
      <p>
        {next.kind === 'exit' ? null : `Give or take ${money(worth.spreadMinor)} from machine to machine. `}
        {money(worth.putInMinor)} put in so far taken off, this machine brings {money(worth.profitMinor)} on average.
        {next.lossProbability === null ? null : ` It ${lossText(next.lossProbability)}.`}
        {worth.risk === null || (next.lossProbability ?? 0) <= worth.risk.atMost
          ? null
          : ' No way on keeps to one in five; this one loses money least often.'}
        {Math.round(worth.cautionCostsMinor) <= 0
          ? null
          : ` Being cautious costs ${money(worth.cautionCostsMinor)} on average here.`}
      </p>
    </>
  )
}

/** How far the plan's figure can be from the best there is. */
const HowSure = ({ view: { worth }, currency }: ViewProps) => {
  const money = (minor: number): string => moneyText(minor, currency)
  return (
    <p>
      {money(worth.carryOnMinor)} is what this plan brings on average, proved for the plan. Nobody could beat{' '}
      {money(worth.upperMinor)} on average, whatever they did next. The best there is lies between.
    </p>
  )
}

const Certain = ({ view: { worth }, currency, why }: ViewProps & { readonly why: WhyProps }) => (
  <div className="strip-certain">
    <dt className="unseen">how sure that is</dt>
    <dd>
      <button type="button" aria-expanded={why.isOpen} aria-controls={why.id} onClick={why.onToggle}>
        certain to within{' '}
        <span className="figure">{moneyText(Math.max(0, worth.upperMinor - worth.carryOnMinor), currency)}</span>
      </button>
    </dd>
  </div>
)

type FigureProps = {
  readonly name: string
  readonly children: ReactNode
  readonly words?: boolean
  readonly why?: WhyProps | null
}

const Figure = ({ name, children, words = false, why = null }: FigureProps) => (
  <div>
    <dt>{name}</dt>
    <dd className={words ? 'strip-words' : 'figure'}>
      {why === null ? (
        children
      ) : (
        <button
          type="button"
          className="figure-why"
          aria-expanded={why.isOpen}
          aria-controls={why.id}
          onClick={why.onToggle}
        >
          {children}
          <span className="unseen">: why?</span>
        </button>
      )}
    </dd>
  </div>
)
