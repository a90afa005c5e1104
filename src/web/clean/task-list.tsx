import { moneyText, type Currency } from '../../base/money.ts'
import type { BenchId, MachineState } from '../../bench/contract.ts'
import type { CleaningTaskView } from '../../machine/cleaning/cleaning-plan.ts'
import { Fold } from '../parts/fold.tsx'
import { minutesText } from '../words.ts'
import { TaskEntry } from './task-entry.tsx'

type Place = { readonly bench: BenchId; readonly state: MachineState }
type TaskListProps = Place & { readonly label: string; readonly tasks: readonly CleaningTaskView[] }

/** Tasks, each one tap away from how it is done and the form that notes it. */
export const TaskList = ({ bench, state, label, tasks }: TaskListProps) => (
  <ul className="clean-tasks" aria-label={label}>
    {tasks.map((task) => (
      <li key={task.id}>
        <Task bench={bench} state={state} task={task} />
      </li>
    ))}
  </ul>
)

type TaskProps = Place & { readonly task: CleaningTaskView }

const Task = ({ bench, state, task }: TaskProps) => (
  <Fold
    className="clean-task"
    title={
      <>
        <span className="clean-task-name">{task.name}</span>
        {task.gainMinor === 0 ? null : (
          <span className="clean-task-money figure">+{moneyText(task.gainMinor, state.currency)}</span>
        )}
        <span className="clean-task-line">{lineOf(task, state)}</span>
      </>
    }
  >
    <p>{task.how}</p>
    {task.parts.length === 0 || task.parts.length > 4 ? null : (
      <p className="quiet">{task.parts.map(({ name }) => name).join(', ')}.</p>
    )}
    {task.behind.length === 0 ? null : (
      <p>Behind: {task.behind.join(', ').toLowerCase()}. Taking that off is not in the minutes.</p>
    )}
    <Cautions task={task} />
    <TaskEntry bench={bench} state={state} task={task} />
    {task.instead === null ? null : (
      <Fold title={`Or: ${task.instead.name.toLowerCase()}`}>
        <p>{task.instead.how}</p>
        <Cautions task={task.instead} />
        <TaskEntry bench={bench} state={state} task={task.instead} />
      </Fold>
    )}
    <Fold title="Where this comes from">
      <ul className="clean-sources">
        <li>{task.source}</li>
        <li>{task.adds}</li>
        {task.cautions.map(({ id, source }) => (
          <li key={id}>{source}</li>
        ))}
      </ul>
    </Fold>
  </Fold>
)

/** What holds for all of it stands at the top of the page, and is not said again with each task. */
export const startCautions = ['plug-out', 'water-away', 'dry-through'] as const

const Cautions = ({ task }: { readonly task: CleaningTaskView }) => {
  const own = task.cautions.filter(({ id }) => !startCautions.some((start) => start === id))
  return own.length === 0 ? null : (
    <ul className="clean-cautions">
      {own.map(({ id, text }) => (
        <li key={id}>{text}</li>
      ))}
    </ul>
  )
}

const perMinuteText = (minor: number, currency: Currency): string =>
  minor < 0 ? 'costs more than it brings' : `${moneyText(minor, currency)} a minute`

/** Why, minutes, materials, money a minute, drying: one line under the name. */
const lineOf = (
  { must, when, minutes, costMinor, perMinuteMinor, gainMinor, dries }: CleaningTaskView,
  { currency }: MachineState,
): string =>
  [
    ...(when === null ? [] : [when]),
    ...(must === null || when !== null ? [] : [must]),
    minutesText(minutes),
    ...(costMinor === 0 ? [] : [moneyText(costMinor, currency)]),
    ...(must !== null || gainMinor === 0 ? [] : [perMinuteText(perMinuteMinor, currency)]),
    ...(dries === null || dries.warm < 1 ? [] : [`dries ${dries.warm}\u00a0h`]),
  ].join(' · ')
