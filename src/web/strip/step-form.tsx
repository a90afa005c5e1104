import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { NextPiece } from '../../bench/stripping/strip-view.ts'
import { Field } from '../parts/field.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { FixingRows } from './fixing-rows.tsx'
import { placeFor, saidOf, type StepDraft, type StepSaid } from './step-notes.ts'

type StepFormProps = {
  readonly next: NextPiece
  readonly place: string
  readonly busy: boolean
  readonly onSaid: (said: StepSaid) => void
}

/** A step that is not as the blueprint says: the fixings, the minutes, a word. */
export const StepForm = ({ next, place, busy, onSaid }: StepFormProps) => {
  const [draft, setDraft] = useState<StepDraft>(() => ({
    fixings: (next.fixings ?? []).map((fixing) => ({ ...fixing, place: placeFor(fixing.kind, place) })),
    minutes: String(next.minutes),
    text: '',
  }))
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const said = saidOf(draft)
    setSlips(said.kind === 'refused' ? said.problems : [])
    if (said.kind === 'ok') onSaid(said.value)
  }
  const kinds = draft.fixings.map((_, at) => `fixings[${at}].kind`)
  return (
    <form className="entry" onSubmit={submit} aria-label={`How it came away: ${next.piece.name}`}>
      <FixingRows
        fixings={draft.fixings}
        place={place}
        problems={slips}
        onChange={(fixings) => setDraft({ ...draft, fixings })}
      />
      <Field
        label="Minutes"
        value={draft.minutes}
        onChange={(minutes) => setDraft({ ...draft, minutes })}
        unit="min"
        inputMode="decimal"
        problems={problemsAt(slips, 'minutes')}
      />
      <Field label="A word" value={draft.text} onChange={(text) => setDraft({ ...draft, text })} long />
      <Problems problems={problemsElsewhere(slips, ['minutes', ...kinds])} />
      <Button type="submit" className="key enter" isDisabled={busy}>
        {next.piece.kind === 'cover' ? 'Off, like this' : 'Out, like this'}
      </Button>
    </form>
  )
}
