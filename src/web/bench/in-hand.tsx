import { lazy, Suspense } from 'react'
import type { BenchId } from '../../bench/contract.ts'
import { moneyText } from '../../base/money.ts'
import type { MachineView } from '../../machine/view.ts'
import { dryingOf } from '../clean/drying-of.ts'
import { Money } from '../parts/money.tsx'
import { Link } from '../router.tsx'
import { complaintsText, minutesText } from '../words.ts'
import type { BenchRow } from './use-bench-views.ts'

const StillDrying = lazy(async () => ({ default: (await import('../clean/still-drying.tsx')).StillDrying }))

/** A machine in hand as one entry of the ledger: its money and its next move. */
export const InHand = ({ bench, row }: { readonly bench: BenchId; readonly row: BenchRow }) => {
  const { machine, view, offer, failure } = row
  const pay = (minor: number | undefined) =>
    minor === undefined ? <span className="figure">…</span> : <Money minor={minor} currency={machine.currency} />
  return (
    <li>
      <Link to={{ kind: 'machine', bench, id: machine.id }} className="ledger-line">
        <strong className="ledger-name">{machine.name}</strong>
      </Link>
      <span className="ledger-claim">
        {machine.practiceSeed === null ? null : 'Practice machine. '}
        {complaintsText(machine.claimed.complaints)}
      </span>
      <span className="worth-line">
        <span>spent {pay(machine.paidMinor + machine.spentMinor)}</span>
        {failure === null ? (
          <>
            <span>as it stands {pay(view?.worth.asItStandsMinor)}</span>
            <span>carried on {pay(view?.worth.carryOnMinor)}</span>
          </>
        ) : null}
        {offer?.kind === 'carry-on' ? <span>an hour brings {pay(offer.minorPerHour)}</span> : null}
      </span>
      <span className="ledger-next">
        {failure === null ? <NextLine view={view} /> : `Could not be worked out: ${failure}`}
      </span>
      {dryingOf(machine).length === 0 ? null : (
        <span className="ledger-next">
          <Suspense fallback="Something is drying.">
            <StillDrying drying={dryingOf(machine)} />
          </Suspense>
        </span>
      )}
    </li>
  )
}

const NextLine = ({ view }: { readonly view: MachineView | null }) => {
  if (view === null) return <>Working out the next move …</>
  const { next, redFlags } = view
  return (
    <>
      {redFlags.length > 0 ? <strong className="warning">Not to be run. </strong> : null}
      Next: <strong>{next.name}</strong>
      {next.minutes > 0 ? `, ${minutesText(next.minutes)}` : null}
    </>
  )
}

/** What to do with the next hour, in one sentence about the first machine. */
export const HourAnswer = ({ row }: { readonly row: BenchRow | undefined }) => {
  if (row === undefined || row.view === null || row.offer?.kind !== 'carry-on')
    return <p>No machine here earns more by working on it.</p>
  const { machine, view, offer } = row
  return (
    <p>
      {machine.name}: <strong>{view.next.name}</strong>. Carrying on brings{' '}
      <span className="figure">{moneyText(offer.minorPerHour, machine.currency)}</span> an hour, your own time paid.
    </p>
  )
}
