import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { BenchId } from '../../bench/contract.ts'
import type { CleanView } from '../../bench/cleaning/clean-view.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { gradeFacts, grades, type Grade } from '../../facts/asking.ts'
import { say } from '../parts/live.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { useNotes } from '../use-notes.ts'
import { capital } from '../words.ts'

const times = [
  { id: 'before', name: 'Before' },
  { id: 'after', name: 'After' },
] as const

type LooksPanelProps = {
  readonly bench: BenchId
  readonly machine: string
  readonly blueprint: Blueprint
  readonly clean: CleanView
}

/** How parts looked before and look after, and the form that says so. */
export const LooksPanel = ({ bench, machine, blueprint, clean }: LooksPanelProps) => {
  const { write, busy, problems } = useNotes(bench, machine)
  const [part, setPart] = useState(blueprint.parts.some(({ id }) => id === 'casing') ? 'casing' : '')
  const [when, setWhen] = useState<'before' | 'after'>(clean.done.length === 0 ? 'before' : 'after')
  const [grade, setGrade] = useState<Grade>(clean.plan.grade)
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    if (await write([{ kind: 'graded', part, when, grade }])) say('Noted.')
  }
  return (
    <section className="panel" aria-label="Looks">
      <h2>Looks</h2>
      <Graded lines={clean.grades} />
      <form className="entry" onSubmit={(event) => void submit(event)} aria-label="Grade a part" noValidate>
        <Select label="Part" value={part} onChange={setPart}>
          {part === '' ? <option value="">Choose one</option> : null}
          {blueprint.parts.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Select>
        <OneOf label="When" options={times} chosen={when} onChange={setWhen} />
        <OneOf label="Grade" options={grades.map((id) => ({ id, name: id }))} chosen={grade} onChange={setGrade} />
        <p className="hint">
          {grade}: {gradeFacts[grade].name}.
        </p>
        <Problems problems={problems} />
        <Button type="submit" className="key" isDisabled={busy || part === ''}>
          Note the grade
        </Button>
      </form>
    </section>
  )
}

const Graded = ({ lines }: { readonly lines: CleanView['grades'] }) =>
  lines.length === 0 ? (
    <p className="quiet">
      Grade parts before you clean them and after. The machine goes by the worst of three and more; of fewer only where
      that is worse than it came in.
    </p>
  ) : (
    <table className="clean-grades">
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col">Before</th>
          <th scope="col">After</th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ part, name, before, after }) => (
          <tr key={part}>
            <th scope="row">{capital(name)}</th>
            <td>{before ?? '–'}</td>
            <td>{after ?? '–'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
