import { useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { keepVariant } from '../api.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useNotes } from '../use-notes.ts'
import { useStripSheet } from './strip-sheet.ts'

/**
 * Covers that were held otherwise than the blueprint says. The count stays with this machine; offered to the blueprint it makes a variant that
 * the next machine of this kind can be added under. A virtual machine is as it was made.
 */
export const OfferDifferent = () => {
  const { bench, document, blueprint, strip, stale } = useStripSheet()
  const client = useQueryClient()
  const { write, problems: refused } = useNotes(bench, document.state.id)
  const [name, setName] = useState(document.state.name)
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const { deviations } = strip
  if (deviations.length === 0) return null
  const offer = async (): Promise<void> => {
    const edits = deviations.map(({ edit }) => edit)
    const answer = await keepVariant(blueprint.id, { name: name.trim(), edits })
    setProblems(answer.kind === 'refused' ? answer.problems : [])
    if (answer.kind === 'refused') return
    client.setQueryData(['blueprint', answer.value.id], answer.value.blueprint)
    void client.invalidateQueries({ queryKey: ['blueprints'] })
    if (await write([{ kind: 'described-by', blueprint: answer.value.id, edits: [...edits] }]))
      say('This machine is read by the variant from here on.')
  }
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    setBusy(true)
    await offer()
    setBusy(false)
  }
  const all = [...problems, ...refused]
  return (
    <section className="panel" aria-label="Different on this one">
      <h2>Different on this one</h2>
      <ul className="plain-list">
        {deviations.map(({ cover, text }) => (
          <li key={cover}>{text}.</li>
        ))}
      </ul>
      {document.state.practiceSeed !== null || document.state.left !== null ? null : (
        <form onSubmit={(event) => void submit(event)} aria-label="Offer to the blueprint">
          <p className="hint">
            {blueprint.name} stays as it is. Offered to it, the count makes a variant; this machine is read by that, and
            the next of its kind can be added under it.
          </p>
          <Field label="Name of the variant" value={name} onChange={setName} problems={problemsAt(all, 'name')} />
          <Problems problems={problemsElsewhere(all, ['name'])} />
          <Button type="submit" className="key" isDisabled={busy || stale || name.trim() === ''}>
            Offer to the blueprint
          </Button>
        </form>
      )}
    </section>
  )
}
