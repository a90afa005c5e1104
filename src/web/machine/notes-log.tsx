import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import type { NoteContentInput } from '../../bench/note.ts'
import { complaintsOf } from '../../blueprint/entry.ts'
import { complaints, type Complaint } from '../../facts/complaints.ts'
import { useWaitingNotes } from '../outbox/outbox.ts'
import { Chips } from '../parts/chips.tsx'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useNameOf } from '../sign-in/use-who.ts'
import { useNotes } from '../use-notes.ts'
import { momentText } from '../words.ts'
import { useSheet } from './sheet.ts'

/** The log, newest first. A slip is struck out in one tap; nothing is erased. */
export const NotesLog = () => {
  const { bench, document } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const [reason, setReason] = useState('')
  const strike = async (note: string, text: string): Promise<void> => {
    if (!(await write([{ kind: 'struck', note, reason: reason.trim() }]))) return
    setReason('')
    say(`Struck out: ${text}`)
  }
  const nameOf = useNameOf()
  const lines = [...document.lines].sort((a, b) => b.seq - a.seq)
  const waits = new Set(useWaitingNotes().map(({ id }) => id))
  return (
    <section className="panel" aria-label="Bench notes">
      <h2>Bench notes</h2>
      {document.state.left === null ? <AddToNotes /> : null}
      <Problems problems={problems} />
      <ol className="log" reversed aria-label="Notes, newest first">
        {lines.map((line) => (
          <li key={line.id}>
            <time dateTime={line.at}>{momentText(line.at)}</time>
            {line.struck ? (
              <s className="quiet">
                <span className="unseen">Struck out: </span>
                {line.text}
              </s>
            ) : (
              <span>{line.text}</span>
            )}
            {nameOf(line.by) === undefined ? null : <span className="quiet"> by {nameOf(line.by)}</span>}
            {waits.has(line.id) ? <span className="quiet"> not sent yet</span> : null}
            {line.canStrike && !line.struck ? (
              <Button
                className="plain strike"
                isDisabled={busy}
                aria-label={`Strike out: ${line.text}`}
                onPress={() => void strike(line.id, line.text)}
              >
                strike out
              </Button>
            ) : null}
          </li>
        ))}
      </ol>
      {document.state.left === null ? (
        <Fold title="Give a reason when striking out">
          <Field label="Reason for the next strike" value={reason} onChange={setReason} hint="Not needed." />
        </Fold>
      ) : null}
    </section>
  )
}

const AddToNotes = () => {
  const { bench, document } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const [text, setText] = useState('')
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    if (text.trim() !== '' && (await write([{ kind: 'said', text: text.trim() }]))) setText('')
  }
  return (
    <>
      <form className="remark" onSubmit={(event) => void submit(event)} aria-label="Add a remark">
        <Field label="Remark" value={text} onChange={setText} />
        <Button type="submit" className="key" isDisabled={busy}>
          Add the remark
        </Button>
        <Problems problems={problems} />
      </form>
      <Fold title="Note what it does, what is certain, or money spent">
        <SeenForm />
        <CertainForm />
        <SpentForm />
      </Fold>
    </>
  )
}

const SeenForm = () => {
  const { bench, document, blueprint } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const [seen, setSeen] = useState<readonly Complaint[]>([])
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    if (seen.length > 0 && (await write([{ kind: 'seen', complaints: [...seen] }]))) setSeen([])
  }
  return (
    <form onSubmit={(event) => void submit(event)} aria-label="What it does, seen by you">
      <Chips
        label="What it does, seen by you"
        options={complaintsOf(blueprint).map((id) => ({ id, name: complaints[id] }))}
        chosen={seen}
        onChange={setSeen}
      />
      <Button type="submit" className="key" isDisabled={busy || seen.length === 0}>
        Note as seen
      </Button>
      <Problems problems={problems} />
    </form>
  )
}

const CertainForm = () => {
  const { bench, document, blueprint } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const [fault, setFault] = useState('')
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    if (fault !== '' && (await write([{ kind: 'confirmed', fault }]))) setFault('')
  }
  return (
    <form className="any-move" onSubmit={(event) => void submit(event)} aria-label="A fault seen for certain">
      <Select label="A fault seen for certain" value={fault} onChange={setFault}>
        <option value="">Choose a fault</option>
        {blueprint.faults.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </Select>
      <Button type="submit" className="key" isDisabled={busy || fault === ''}>
        Note as certain
      </Button>
      <Problems problems={problems} />
    </form>
  )
}

const SpentForm = () => {
  const { bench, document } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const [cost, setCost] = useState('')
  const [text, setText] = useState('')
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const costMinor = moneyFromText(cost)
    const wrong = [
      ...(costMinor === null
        ? [problem('not-money', 'costMinor', 'No amount of money is entered', 'Write it like 4.50')]
        : []),
      ...(text.trim() === '' ? [problem('empty', 'text', 'It does not say on what', 'Write what was bought')] : []),
    ]
    setSlips(wrong)
    if (costMinor === null || wrong.length > 0) return
    const spent: NoteContentInput = { kind: 'spent', costMinor, text: text.trim() }
    if (!(await write([spent]))) return
    setCost('')
    setText('')
  }
  const all = [...slips, ...problems]
  return (
    <form onSubmit={(event) => void submit(event)} aria-label="Money spent">
      <div className="field-row">
        <Field
          label="Spent"
          value={cost}
          onChange={setCost}
          unit={document.state.currency}
          inputMode="decimal"
          problems={problemsAt(all, 'costMinor')}
        />
        <Field label="On what" value={text} onChange={setText} problems={problemsAt(all, 'text')} />
      </div>
      <Problems problems={problemsElsewhere(all, ['costMinor', 'text'])} />
      <Button type="submit" className="key" isDisabled={busy}>
        Note as spent
      </Button>
    </form>
  )
}
