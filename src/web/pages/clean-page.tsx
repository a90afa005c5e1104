import { moneyText } from '../../base/money.ts'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { CleanView } from '../../bench/cleaning/clean-view.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { gradeFacts } from '../../facts/asking.ts'
import { cleaningCautions } from '../../facts/cleaning-cautions.ts'
import { DoneList } from '../clean/done-list.tsx'
import { DryingPanel } from '../clean/drying-panel.tsx'
import { LooksPanel } from '../clean/looks-panel.tsx'
import { startCautions, TaskList } from '../clean/task-list.tsx'
import { WashedContext } from '../clean/task-entry.tsx'
import { useClean } from '../clean/use-clean.ts'
import { useNow } from '../clean/use-now.ts'
import { Fold } from '../parts/fold.tsx'
import { useResultInSight } from '../parts/in-sight.ts'
import { Loading } from '../parts/loading.tsx'
import { useBlueprint, useMachine } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import { minutesText } from '../words.ts'
import '../style/clean.css'

/** What is worth cleaning on one machine, what dries, and how it looks. */
export const CleanPage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const now = useNow()
  const { data: document, error } = useMachine(bench, id)
  const { data: blueprint, error: blueprintError } = useBlueprint(document?.state.blueprint ?? '')
  const { clean, stale, error: cleanError } = useClean(bench, document, blueprint, now)
  const title = document === undefined ? 'Clean' : `${document.state.name}: clean`
  return (
    <div className="sheet machine">
      <div className="machine-title">
        <PageTitle windowTitle={title}>{title}</PageTitle>
        <Link to={{ kind: 'machine', bench, id }} className="on-its-own">
          Back to the machine
        </Link>
        {document === undefined || blueprint === undefined || clean === null ? (
          <Loading what="what is worth cleaning" error={error ?? blueprintError ?? cleanError} />
        ) : null}
      </div>
      {document === undefined || blueprint === undefined || clean === null ? null : (
        <Sheet bench={bench} document={document} blueprint={blueprint} clean={clean} now={now} stale={stale} />
      )}
    </div>
  )
}

type SheetProps = {
  readonly bench: BenchId
  readonly document: MachineDocument
  readonly blueprint: Blueprint
  readonly clean: CleanView
  readonly now: string
  readonly stale: boolean
}

const Sheet = ({ bench, document, blueprint, clean, now, stale }: SheetProps) => {
  const { state } = document
  const hasLeft = state.left !== null
  const showDrying = useResultInSight(!stale, 'clean-drying')
  return (
    <WashedContext value={showDrying}>
      <div className="machine-left" aria-busy={stale}>
        <DryingPanel bench={bench} machine={state.id} clean={clean} now={now} />
        {hasLeft ? <p>It has left the bench.</p> : <ToDo bench={bench} document={document} clean={clean} />}
      </div>
      <div className="machine-right">
        {hasLeft ? null : <LooksPanel bench={bench} machine={state.id} blueprint={blueprint} clean={clean} />}
        <DoneList bench={bench} machine={state.id} clean={clean} currency={state.currency} canStrike={!hasLeft} />
        <Link to={{ kind: 'photos', bench, id: state.id }} className="on-its-own">
          Photographs, before and after
        </Link>
      </div>
    </WashedContext>
  )
}

/** Where the looks of the whole machine are from. */
const looksFrom = {
  listed: 'as it is offered',
  parts: 'its worst graded part',
  condition: 'as it came in; three graded parts or a worse one change it',
} as const

type ToDoProps = Pick<SheetProps, 'bench' | 'document' | 'clean'>

const ToDo = ({ bench, document: { state }, clean: { plan, looksBy, isShownToWork } }: ToDoProps) => {
  const worth = plan.ranked.filter(({ isWorthIt }) => isWorthIt)
  const rest = plan.ranked.filter(({ isWorthIt }) => !isWorthIt)
  const money = (minor: number): string => moneyText(minor, state.currency)
  return (
    <>
      <section className="panel clean-head" aria-label="What it comes to">
        <h2>What it comes to</h2>
        <p>
          {isShownToWork ? 'Clean it is' : 'Clean, and once it works, it is'} worth asking{' '}
          <strong className="figure">{money(plan.askMinor)}</strong>, looks {plan.grade}: {gradeFacts[plan.grade].name}{' '}
          ({looksFrom[looksBy]}).
        </p>
        <p>
          <Link to={{ kind: 'asking', bench, id: state.id }}>What to ask</Link> says how.
        </p>
        <ul className="clean-cautions" aria-label="Before you start">
          {startCautions.map((id) => (
            <li key={id}>{cleaningCautions[id].text}</li>
          ))}
        </ul>
      </section>
      {plan.first.length === 0 ? null : (
        <section aria-label="First, whatever it brings">
          <h2>First, whatever it brings</h2>
          <TaskList bench={bench} state={state} label="First" tasks={plan.first} />
        </section>
      )}
      <section aria-label="Then, best money first">
        <h2>Then, best money first{worth.length === 0 ? '' : `: ${sumText(worth)}`}</h2>
        {worth.length === 0 ? (
          <p>Nothing more here brings what a minute of yours is worth, {money(plan.hourMinor / 60)}.</p>
        ) : (
          <TaskList bench={bench} state={state} label="Best money first" tasks={worth} />
        )}
      </section>
      {rest.length === 0 ? null : (
        <Fold title={`Not worth your minutes at ${money(plan.hourMinor / 60)} each: ${rest.length}`}>
          <TaskList bench={bench} state={state} label="Brings less" tasks={rest} />
        </Fold>
      )}
      <Fold title="Only if you find it">
        <TaskList bench={bench} state={state} label="Only if found" tasks={plan.ifFound} />
      </Fold>
    </>
  )
}

const sumText = (tasks: readonly { readonly minutes: number }[]): string =>
  minutesText(tasks.reduce((sum, { minutes }) => sum + minutes, 0))
