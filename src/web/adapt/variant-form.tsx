import { useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { Edit } from '../../blueprint/adapt-edits.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { keepVariant } from '../api.ts'
import { Field } from '../parts/field.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { EditForm } from './edit-form.tsx'
import { EditList } from './edit-list.tsx'
import { useAdapted, useEdits } from './use-edits.ts'
import '../style/adapt.css'

type VariantFormProps = {
  readonly blueprint: Blueprint
  /** Where the unfinished list is kept in this tab. */
  readonly keptAs: string
  readonly firstName: string
  readonly saveLabel: string
  /** What follows once the variant is kept; false when it did not work out, and the list stays. */
  readonly onKept: (id: string, edits: readonly Edit[]) => Promise<boolean>
}

/** Puts a variant of a blueprint together on the page: what is different, one after another, then a name for it. */
export const VariantForm = ({ blueprint, keptAs, firstName, saveLabel, onKept }: VariantFormProps) => {
  const client = useQueryClient()
  const edits = useEdits(keptAs, firstName)
  const adapted = useAdapted(blueprint, edits.edits)
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const save = async (): Promise<void> => {
    const answer = await keepVariant(blueprint.id, { name: edits.name.trim(), edits: edits.edits })
    if (answer.kind === 'refused') return setProblems(answer.problems)
    setProblems([])
    // The page goes on with the variant at once: nothing on it is taken down while the variant is fetched.
    client.setQueryData(['blueprint', answer.value.id], answer.value.blueprint)
    void client.invalidateQueries({ queryKey: ['blueprints'] })
    if (await onKept(answer.value.id, edits.edits)) edits.clear()
  }
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    setBusy(true)
    await save()
    setBusy(false)
  }
  const isSound = edits.edits.length > 0 && adapted?.problems.length === 0
  return (
    <>
      <EditList edits={edits} adapted={adapted} />
      <EditForm blueprint={blueprint} onAdd={edits.add} />
      {edits.edits.length === 0 ? null : (
        <form className="entry" onSubmit={(event) => void submit(event)} aria-label="Name and keep it">
          <Field
            label="Name of the variant"
            value={edits.name}
            onChange={edits.setName}
            hint="The next machine of this kind can be added under it."
            problems={problemsAt(problems, 'name')}
          />
          <Problems problems={problemsElsewhere(problems, ['name'])} />
          <Button type="submit" className="key enter" isDisabled={busy || !isSound || edits.name.trim() === ''}>
            {saveLabel}
          </Button>
        </form>
      )}
    </>
  )
}
