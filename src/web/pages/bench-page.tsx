import type { BenchId, MachineState } from '../../bench/contract.ts'
import { moneyText } from '../../base/money.ts'
import { Fold } from '../parts/fold.tsx'
import { Loading } from '../parts/loading.tsx'
import { Money } from '../parts/money.tsx'
import { useBlueprint, useMachine, useMachines } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import { useMachineView } from '../use-machine-view.ts'
import { complaintsText, dayText, exitNames, minutesText } from '../words.ts'

/** What is in hand, what each is worth, what to do with the next hour. */
export const BenchPage = ({ bench }: { readonly bench: BenchId }) => {
  const { data: machines, error } = useMachines(bench)
  return (
    <div className="sheet">
      <PageTitle windowTitle={bench === 'demo' ? 'Demo bench' : 'Bench'}>
        {bench === 'demo' ? 'Demo bench' : 'On the bench'}
      </PageTitle>
      {bench === 'demo' ? <p className="quiet">Invented machines, to look round with.</p> : null}
      {machines === undefined ? (
        <Loading what="the bench" error={error} />
      ) : (
        <Machines bench={bench} machines={machines} />
      )}
    </div>
  )
}

type MachinesProps = { readonly bench: BenchId; readonly machines: readonly MachineState[] }

const Machines = ({ bench, machines }: MachinesProps) => {
  const newestFirst = [...machines].sort((a, b) => b.addedAt.localeCompare(a.addedAt))
  const inHand = newestFirst.filter((machine) => machine.left === null)
  const left = newestFirst.filter((machine) => machine.left !== null)
  return (
    <>
      {machines.length === 0 ? <EmptyBench bench={bench} /> : null}
      {machines.length > 0 && bench === 'own' ? (
        <p>
          <Link to={{ kind: 'add' }} className="button">
            Add a machine
          </Link>
        </p>
      ) : null}
      {machines.length > 0 && inHand.length === 0 ? <p>Nothing in hand. Everything has left.</p> : null}
      <ul className="ledger" aria-label="In hand">
        {inHand.map((machine) => (
          <InHand key={machine.id} bench={bench} machine={machine} />
        ))}
      </ul>
      {left.length === 0 ? null : (
        <Fold title={`Left the bench: ${left.length}`}>
          <ul className="ledger">
            {left.map((machine) => (
              <Gone key={machine.id} bench={bench} machine={machine} />
            ))}
          </ul>
        </Fold>
      )}
    </>
  )
}

const EmptyBench = ({ bench }: { readonly bench: BenchId }) => (
  <div className="empty">
    <p>{bench === 'own' ? 'The bench is clear.' : 'The demo bench is empty.'} Three ways to start:</p>
    <ul className="ledger">
      <Start to={{ kind: 'add' }} name="Add a machine" what="One that stands before you. Under a minute." />
      <Start
        to={{ kind: 'practice' }}
        name="Practise on a virtual machine"
        what="A hidden fault and a virtual meter."
      />
      <Start
        to={{ kind: 'bench', bench: 'demo' }}
        name="Look at the demo bench"
        what="Invented machines, part way through."
      />
    </ul>
  </div>
)

const Start = ({
  to,
  name,
  what,
}: {
  readonly to: Parameters<typeof Link>[0]['to']
  readonly name: string
  readonly what: string
}) => (
  <li>
    <Link to={to} className="ledger-line">
      <strong className="ledger-name">{name}</strong>
    </Link>
    <span className="quiet">{what}</span>
  </li>
)

type RowProps = { readonly bench: BenchId; readonly machine: MachineState }

const InHand = ({ bench, machine }: RowProps) => {
  const { data: document } = useMachine(bench, machine.id)
  const { data: blueprint } = useBlueprint(machine.blueprint)
  const { view, failure } = useMachineView(document, blueprint)
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
        <span>as it stands {pay(view?.worth.asItStandsMinor)}</span>
        <span>carried on {pay(view?.worth.carryOnMinor)}</span>
      </span>
      <span className="ledger-next">
        {failure === null ? <NextLine view={view} /> : `Could not be worked out: ${failure}`}
      </span>
    </li>
  )
}

const NextLine = ({ view }: { readonly view: ReturnType<typeof useMachineView>['view'] }) => {
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

const Gone = ({ bench, machine }: RowProps) => {
  if (machine.left === null) return null
  const { exit, receivedMinor, profitMinor, at } = machine.left
  return (
    <li>
      <Link to={{ kind: 'machine', bench, id: machine.id }} className="ledger-line">
        <strong className="ledger-name">{machine.name}</strong>
      </Link>
      <span className="quiet">
        {exitNames[exit].past}, {dayText(at)}
      </span>
      <span className="worth-line">
        <span>received {moneyText(receivedMinor, machine.currency)}</span>
        <span>
          profit <strong className="figure">{moneyText(profitMinor, machine.currency)}</strong>
        </span>
        <span>{minutesText(machine.minutes)}</span>
      </span>
    </li>
  )
}
