import type { ReactNode } from 'react'
import { moneyText } from '../../base/money.ts'
import type { BenchId } from '../../bench/contract.ts'
import { partHistory } from '../../bench/shelf/part-history.ts'
import type { PartState } from '../../bench/shelf/part-state.ts'
import type { PartDocument } from '../../bench/shelf/shelf-commands.ts'
import { partKinds } from '../../facts/part-kinds.ts'
import { Fold } from '../parts/fold.tsx'
import { History } from '../parts/history.tsx'
import { Loading } from '../parts/loading.tsx'
import { useMachines } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import { DescribeForm } from '../shelf/describe-form.tsx'
import { GoesForm } from '../shelf/goes-form.tsx'
import { KeepForm } from '../shelf/keep-form.tsx'
import { StrikeEntry } from '../shelf/strike-entry.tsx'
import { conditionText, specText } from '../shelf/words.ts'
import { usePart } from '../use-shelf.ts'
import '../style/shelf.css'

/** One part of the shelf: what it is, where from, what it stands at, and what can be done with it. */
export const PartPage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data, error } = usePart(bench, id)
  return (
    <div className="sheet">
      <PageTitle windowTitle={data?.state.name ?? 'Part'}>{data?.state.name ?? 'Part'}</PageTitle>
      <p>
        <Link to={{ kind: 'shelf', bench }} className="on-its-own">
          The shelf
        </Link>
      </p>
      {data === undefined ? <Loading what="the part" error={error} /> : <Part bench={bench} part={data} />}
    </div>
  )
}

type PartProps = { readonly bench: BenchId; readonly part: PartDocument }

const Part = ({ bench, part }: PartProps) => {
  const { state } = part
  return (
    <>
      <Facts bench={bench} state={state} />
      {state.count === 0 ? <p>None of it is left.</p> : <KeepForm bench={bench} state={state} />}
      <Fold title="Describe or correct it">
        <DescribeForm key={state.version} bench={bench} state={state} />
      </Fold>
      {state.count === 0 ? null : (
        <>
          <Fold title="Sold">
            <GoesForm key={state.version} bench={bench} state={state} what="sold" />
          </Fold>
          <Fold title="Scrapped">
            <GoesForm key={state.version} bench={bench} state={state} what="scrapped" />
          </Fold>
        </>
      )}
      <Fold title="Counted">
        <GoesForm key={state.version} bench={bench} state={state} what="counted" />
      </Fold>
      <History
        lines={partHistory(part)}
        machineLink={(machine) => <MachineLink bench={bench} id={machine} />}
        strike={(entry, text) => <StrikeEntry bench={bench} state={state} entry={entry} text={text} />}
      />
    </>
  )
}

const Facts = ({ bench, state }: { readonly bench: BenchId; readonly state: PartState }) => {
  const money = (minor: number): string => moneyText(minor, state.currency)
  return (
    <dl className="account">
      <Line name="what">
        {[partKinds[state.partKind].name, specText(state.partKind, state.spec)].filter(Boolean).join(': ')}
      </Line>
      <Line name="condition">{conditionText(state.condition)}</Line>
      <Line name="there">
        {state.count}
        {state.place === '' ? null : `, ${state.place}`}
      </Line>
      <Line name="stands at">{money(state.costMinor)}</Line>
      <Line name="one fetches">
        {state.fetchesMinor === null ? 'what the plan of a machine reckons with' : money(state.fetchesMinor)}
      </Line>
      <Line name="where from">
        {state.origin.kind === 'machine' ? (
          <Link to={{ kind: 'machine', bench, id: state.origin.machine }} className="on-its-own">
            A machine of this bench
          </Link>
        ) : state.origin.kind === 'bought' ? (
          `bought: ${state.origin.where}`
        ) : (
          'it lay there'
        )}
      </Line>
      {state.reservedFor === null ? null : (
        <Line name="kept for">
          <MachineLink bench={bench} id={state.reservedFor} />
        </Line>
      )}
    </dl>
  )
}

const Line = ({ name, children }: { readonly name: string; readonly children: ReactNode }) => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
)

const MachineLink = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data } = useMachines(bench)
  const machine = data?.pages.flatMap((page) => page.machines).find((one) => one.id === id)
  return (
    <Link to={{ kind: 'machine', bench, id }} className="on-its-own">
      {machine?.name ?? 'a machine of this bench'}
    </Link>
  )
}
