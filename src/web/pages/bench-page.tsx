import { lazy, Suspense } from 'react'
import type { BenchId, MachineState } from '../../bench/contract.ts'
import { moneyText } from '../../base/money.ts'
import { Button } from 'react-aria-components/Button'
import { HourAnswer, InHand } from '../bench/in-hand.tsx'
import { useBenchOrder } from '../bench/use-bench-order.ts'
import { useBenchViews, type BenchRow } from '../bench/use-bench-views.ts'
import { Fold } from '../parts/fold.tsx'
import { Loading } from '../parts/loading.tsx'
import { useMachines } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import { dayText, exitNames, minutesText } from '../words.ts'

const KeptAdverts = lazy(async () => ({ default: (await import('../buy/kept-adverts.tsx')).KeptAdverts }))

/** What is in hand, what each is worth, what to do with the next hour. */
export const BenchPage = ({ bench }: { readonly bench: BenchId }) => {
  const { data, error, hasNextPage, fetchNextPage } = useMachines(bench)
  const machines = data?.pages.flatMap((page) => page.machines)
  const further = hasNextPage ? () => void fetchNextPage() : null
  return (
    <div className="sheet">
      <PageTitle windowTitle={bench === 'demo' ? 'Demo bench' : 'Bench'}>
        {bench === 'demo' ? 'Demo bench' : 'On the bench'}
      </PageTitle>
      {bench === 'demo' ? <p className="quiet">Invented machines, to look round with.</p> : null}
      <p className="to-books">
        <Link to={{ kind: 'books', bench }}>Books</Link> <Link to={{ kind: 'shelf', bench }}>Shelf</Link>
      </p>
      {machines === undefined ? (
        <Loading what="the bench" error={error} />
      ) : (
        <Machines bench={bench} machines={machines} left={data?.pages[0]?.left ?? 0} further={further} />
      )}
    </div>
  )
}

type MachinesProps = { readonly bench: BenchId; readonly machines: readonly MachineState[] }

type AllProps = MachinesProps & {
  /** How many have left. */
  readonly left: number
  /** Fetches further ones that left; null when all are there. */
  readonly further: (() => void) | null
}

const Machines = ({ bench, machines, left: leftInAll, further }: AllProps) => {
  const newestFirst = [...machines].sort((a, b) => b.addedAt.localeCompare(a.addedAt))
  const inHand = newestFirst.filter((machine) => machine.left === null)
  const left = newestFirst.filter((machine) => machine.left !== null)
  return (
    <>
      {machines.length === 0 ? <EmptyBench bench={bench} /> : null}
      {machines.length > 0 && bench === 'own' ? (
        <p className="bench-keys">
          <Link to={{ kind: 'add' }} className="button">
            Add a machine
          </Link>
          <Link to={{ kind: 'buy' }} className="button">
            Worth buying?
          </Link>
        </p>
      ) : null}
      {machines.length > 0 && inHand.length === 0 ? <p>Nothing in hand. Everything has left.</p> : null}
      {inHand.length === 0 ? null : <Hand bench={bench} machines={inHand} />}
      <KeptOnBench bench={bench} />
      {left.length === 0 ? null : (
        <Fold title={`Left the bench: ${leftInAll}`}>
          <ul className="ledger">
            {left.map((machine) => (
              <Gone key={machine.id} bench={bench} machine={machine} />
            ))}
          </ul>
          {further === null ? null : (
            <Button className="key" onPress={further}>
              Show more
            </Button>
          )}
        </Fold>
      )}
    </>
  )
}

/** Adverts that are kept, one tap away. */
const KeptOnBench = ({ bench }: { readonly bench: BenchId }) => (
  <Fold title="Kept adverts">
    <Suspense fallback={<p className="quiet">Fetching the adverts …</p>}>
      <KeptAdverts bench={bench} />
    </Suspense>
  </Fold>
)

/** What is in hand: for the next hour, best first, then what is ready to go. As it came in until that is known. */
const Hand = ({ bench, machines }: MachinesProps) => {
  const rows = useBenchViews(bench, machines)
  const { order, canOrderNow, orderNow, touch } = useBenchOrder(rows)
  const rowsOf = (ids: readonly string[] | undefined): readonly BenchRow[] =>
    (ids ?? []).flatMap((id) => rows.filter(({ machine }) => machine.id === id))
  const carryOn = rowsOf(order?.carryOn)
  const ready = rowsOf(order?.ready)
  const rest = rows.filter((row) => !carryOn.includes(row) && !ready.includes(row))
  const list = (label: string, some: readonly BenchRow[]) => (
    <ul className="ledger" aria-label={label}>
      {some.map((row) => (
        <InHand key={row.machine.id} bench={bench} row={row} />
      ))}
    </ul>
  )
  return (
    <div {...touch} aria-busy={rows.some(({ done }) => !done)}>
      {canOrderNow ? (
        <p>
          <Button className="key" onPress={orderNow}>
            Order what is worked out
          </Button>
        </p>
      ) : null}
      {order === null ? null : (
        <section className="hour" aria-label="The next hour">
          <h2>What should I do with the next hour?</h2>
          <HourAnswer row={carryOn[0]} />
          {list('For the next hour, best first', carryOn)}
        </section>
      )}
      {ready.length === 0 ? null : (
        <section className="hour" aria-label="Ready to go">
          <h2>Ready to go</h2>
          {list('Ready to go', ready)}
        </section>
      )}
      {list('In hand', rest)}
    </div>
  )
}

const EmptyBench = ({ bench }: { readonly bench: BenchId }) => (
  <div className="empty">
    <p>{bench === 'own' ? 'The bench is clear.' : 'The demo bench is empty.'} Four ways to start:</p>
    <ul className="ledger">
      <Start to={{ kind: 'buy' }} name="Worth buying?" what="An advert before you: the most to pay for it." />
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
