import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { Edit } from '../../blueprint/adapt-edits.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { problemsElsewhere } from '../problems-at.ts'
import { draftOf, editOf, type EditDraft } from './edit-draft.ts'
import { EditFields } from './edit-fields.tsx'
import { thingKinds, thingsOf, waysOf, type ThingKind } from './things.ts'

type EditFormProps = { readonly blueprint: Blueprint; readonly onAdd: (edit: Edit) => void }

const fields = ['text', 'openMin', 'closeMin', 'perHundred', 'sharePercent', 'costLow', 'costHigh', 'minutes']
const plateFields = ['voltageV', 'frequencyHz', 'powerW']

/** Says one thing that is different: what it is, in which way, and what it is like here. */
export const EditForm = ({ blueprint, onAdd }: EditFormProps) => {
  const [draft, setDraft] = useState<EditDraft>(() => draftOf(blueprint, 'part', '', 'part-absent'))
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const change = (next: EditDraft): void => {
    setDraft(next)
    setProblems([])
  }
  const chooseKind = (thing: ThingKind): void =>
    change(draftOf(blueprint, thing, thing === 'plate' ? 'plate' : '', waysOf[thing][0]?.id ?? 'plate'))
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const edit = editOf(draft)
    if (edit.kind === 'refused') return setProblems(edit.problems)
    onAdd(edit.value)
    chooseKind(draft.thing)
  }
  const fixings = draft.fixings.flatMap((_, at) => [`fixings[${at}].count`, `fixings[${at}].kind`])
  return (
    <form className="say-different" onSubmit={submit} aria-label="Say what is different">
      <Select label="What is different" value={draft.thing} onChange={(thing) => chooseKind(thing as ThingKind)}>
        {thingKinds.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </Select>
      {draft.thing === 'plate' ? null : (
        <Select
          label="Which"
          value={draft.id}
          onChange={(id) => change(draftOf(blueprint, draft.thing, id, draft.way))}
        >
          <option value="">Choose</option>
          {thingsOf(blueprint, draft.thing).map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Select>
      )}
      {draft.id === '' ? null : (
        <>
          {waysOf[draft.thing].length < 2 ? null : (
            <OneOf
              label="In which way"
              options={waysOf[draft.thing]}
              chosen={draft.way}
              onChange={(way) => change(draftOf(blueprint, draft.thing, draft.id, way))}
              className="ways"
            />
          )}
          <EditFields blueprint={blueprint} draft={draft} problems={problems} onChange={change} />
        </>
      )}
      <Problems problems={problemsElsewhere(problems, [...fields, ...plateFields, ...fixings])} />
      <Button type="submit" className="key" isDisabled={draft.id === ''}>
        Add to the list
      </Button>
    </form>
  )
}
