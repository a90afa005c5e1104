import { createContext, useContext, useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { inSentence } from '../../base/in-sentence.ts'
import { moneyFromText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { quantityFromText } from '../../base/units.ts'
import type { BenchId, MachineState } from '../../bench/contract.ts'
import type { CleaningTaskView } from '../../machine/cleaning/cleaning-plan.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useNotes } from '../use-notes.ts'

type Room = 'warm' | 'damp'
type TaskEntryProps = { readonly bench: BenchId; readonly state: MachineState; readonly task: CleaningTaskView }

/** Called as something that dries is noted. */
export const WashedContext = createContext<() => void>(() => undefined)

/** That a task is done: minutes and materials as they came out, and how long it dries. */
export const TaskEntry = ({ bench, state, task }: TaskEntryProps) => {
  const { write, busy, problems } = useNotes(bench, state.id)
  const onWashed = useContext(WashedContext)
  const [minutes, setMinutes] = useState(String(task.minutes))
  const [cost, setCost] = useState((task.costMinor / 100).toFixed(2))
  const [part, setPart] = useState('')
  const [room, setRoom] = useState<Room>('warm')
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const costMinor = cost.trim() === '' ? 0 : moneyFromText(cost)
    const took = quantityFromText(minutes, 'durationMin', 'minutes')
    const wrong = [...(took.kind === 'refused' ? took.problems : []), ...(costMinor === null ? [notMoney] : [])]
    setSlips(wrong)
    if (costMinor === null || took.kind === 'refused') return
    const named = part === '' ? (task.parts.length === 1 ? task.parts[0]?.id : undefined) : part
    const content = {
      kind: 'cleaned' as const,
      task: task.id,
      ...(named === undefined ? {} : { part: named }),
      minutes: took.value,
      costMinor,
      ...(task.dries === null ? {} : { dryHours: task.dries[room] }),
    }
    if (!(await write([content]))) return
    say(task.dries === null ? 'Noted.' : 'Noted. Its drying is counted from now.')
    if (content.dryHours !== undefined && content.dryHours > 0) onWashed()
  }
  const all = [...slips, ...problems]
  return (
    <form className="entry" onSubmit={(event) => void submit(event)} aria-label={`Done: ${task.name}`} noValidate>
      {task.parts.length < 2 ? null : (
        <Select label="Which of them" value={part} onChange={setPart}>
          <option value="">All of them</option>
          {task.parts.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Select>
      )}
      <div className="field-row">
        <Field
          label="Minutes it took"
          value={minutes}
          onChange={setMinutes}
          unit="min"
          inputMode="decimal"
          problems={problemsAt(all, 'minutes')}
        />
        <Field
          label="Materials"
          value={cost}
          onChange={setCost}
          unit={state.currency}
          inputMode="decimal"
          problems={problemsAt(all, 'costMinor')}
        />
      </div>
      {task.dries === null ? null : (
        <OneOf
          label="It dries in a room that is"
          options={[
            { id: 'warm', name: `Warm, dry: ${hoursText(task.dries.warm)}` },
            { id: 'damp', name: `Cold or damp: ${hoursText(task.dries.damp)}` },
          ]}
          chosen={room}
          onChange={setRoom}
        />
      )}
      <Problems problems={problemsElsewhere(all, ['minutes', 'costMinor'])} />
      <Button type="submit" className="key main" isDisabled={busy}>
        Done: {inSentence(task.name)}
      </Button>
    </form>
  )
}

const hoursText = (hours: number): string => (hours < 1 ? `${hours * 60} min` : `${hours} h`)

const notMoney = problem('not-money', 'costMinor', 'That is not an amount of money', 'Write it like 3.20')
