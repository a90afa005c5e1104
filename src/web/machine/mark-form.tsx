import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { Chips } from '../parts/chips.tsx'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { useNotes } from '../use-notes.ts'
import { markKinds, markOf, markProblems, plateClues, type MarkKind, type PlateClue } from './mark-fields.ts'
import { useSheet } from './sheet.ts'

/** Enters a date mark: on which part, what it looks like, and its figures as seen. */
export const MarkForm = () => {
  const { bench, document, blueprint } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const [part, setPart] = useState(blueprint.parts[0]?.id ?? '')
  const [kind, setKind] = useState<MarkKind>('one-ring')
  const [entries, setEntries] = useState<Readonly<Record<string, string>>>({})
  const [clues, setClues] = useState<readonly PlateClue[]>([])
  const [wrong, setWrong] = useState<readonly Problem[]>([])
  const chosen = markKinds.find(({ id }) => id === kind) ?? markKinds[0]
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const found = markProblems(kind, entries)
    setWrong(found)
    if (found.length > 0 || busy || !(await write([{ kind: 'stamp', part, reading: markOf(kind, entries, clues) }])))
      return
    say('Date mark entered.')
    setEntries({})
    setClues([])
  }
  return (
    <form className="mark-form" onSubmit={(event) => void submit(event)} aria-label="Enter a date mark" noValidate>
      <Select label="On which part" value={part} onChange={setPart}>
        {blueprint.parts.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </Select>
      <Select label="What it looks like" value={kind} onChange={(id) => setKind(id as MarkKind)}>
        {markKinds.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </Select>
      <p className="quiet">{chosen?.looks}</p>
      <div className="mark-fields">
        {chosen?.fields.map(({ id, label, optional, text }) => (
          <Field
            key={`${kind} ${id}`}
            label={optional === true ? `${label}, if seen` : label}
            value={entries[id] ?? ''}
            onChange={(value) => setEntries({ ...entries, [id]: value })}
            inputMode={text === true ? 'text' : 'numeric'}
            {...(id === 'date' ? { hint: 'As 2009-04-01.' } : {})}
          />
        ))}
      </div>
      {kind === 'plate' ? (
        <Chips label="What plate and plug show" options={plateClues} chosen={clues} onChange={setClues} />
      ) : null}
      <Button type="submit" className="key" isDisabled={busy}>
        Enter the mark
      </Button>
      <Problems problems={[...wrong, ...problems]} />
    </form>
  )
}
