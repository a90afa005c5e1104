import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import type { NoteContentInput } from '../../bench/note.ts'
import type { WorthView } from '../../machine/view.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useNotes } from '../use-notes.ts'
import { useSheet } from './sheet.ts'

type Valued = Extract<NoteContentInput, { kind: 'valued' }>

const amountText = (minor: number): string => (Math.round(minor) / 100).toFixed(2)

/** What the plan reckons with for this machine, as a dated note; only what was changed is written. */
export const ValueForm = ({ worth }: { readonly worth: WorthView }) => {
  const { bench, document, blueprint } = useSheet()
  const { state } = document
  const { write, busy, problems } = useNotes(bench, state.id)
  const start = {
    working: amountText(worth.prices.working.minor),
    spares: amountText(worth.prices.spares.minor),
    hour: amountText(state.hourMinor),
  }
  const [typed, setTyped] = useState({ ...start, part: '', partPrice: '' })
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const set = (name: keyof typeof typed) => (text: string) => setTyped((before) => ({ ...before, [name]: text }))
  const choosePart = (part: string): void => {
    const known = worth.prices.parts.find(({ id }) => id === part)
    setTyped((before) => ({ ...before, part, partPrice: known === undefined ? '' : amountText(known.price.minor) }))
  }
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const { content, wrong } = contentOf(start, typed)
    setSlips(wrong)
    if (wrong.length === 0 && (await write([content]))) say('Noted. The plan is worked out again.')
  }
  const all = [...slips, ...problems]
  const unit = state.currency
  const money = { unit, inputMode: 'decimal' } as const
  return (
    <form onSubmit={(event) => void submit(event)} aria-label="Prices and your hour" noValidate>
      <div className="field-row">
        <Field
          label="Sold working"
          value={typed.working}
          onChange={set('working')}
          {...money}
          problems={problemsAt(all, 'workingMinor')}
        />
        <Field
          label="Sold for spares"
          value={typed.spares}
          onChange={set('spares')}
          {...money}
          problems={problemsAt(all, 'sparesMinor')}
        />
        <Field
          label="Your hour"
          value={typed.hour}
          onChange={set('hour')}
          {...money}
          problems={problemsAt(all, 'hourMinor')}
        />
      </div>
      <div className="field-row">
        <Select label="One part on its own" value={typed.part} onChange={choosePart}>
          <option value="">none</option>
          {blueprint.parts
            .filter(({ id }) => !state.missing.includes(id))
            .map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
        </Select>
        {typed.part === '' ? null : (
          <Field
            label="That part fetches"
            value={typed.partPrice}
            onChange={set('partPrice')}
            {...money}
            problems={problemsAt(all, 'priceMinor')}
          />
        )}
      </div>
      <p className="hint">
        Goes into the bench notes with today's date. Strike the note out, and the old figure holds.
      </p>
      <Problems problems={problemsElsewhere(all, ['workingMinor', 'sparesMinor', 'hourMinor', 'priceMinor'])} />
      <Button type="submit" className="key" isDisabled={busy}>
        Note it
      </Button>
    </form>
  )
}

type Start = { readonly working: string; readonly spares: string; readonly hour: string }
type Typed = Start & { readonly part: string; readonly partPrice: string }

/** The note of what differs from what was there, and what is wrong with it. */
const contentOf = (start: Start, typed: Typed): { readonly content: Valued; readonly wrong: readonly Problem[] } => {
  const wrong: Problem[] = []
  const amount = (text: string, where: string): number => {
    const minor = moneyFromText(text)
    if (minor === null)
      wrong.push(problem('not-money', where, `“${text}” is not an amount of money`, 'Write it like 45.00'))
    return minor ?? 0
  }
  const changed = (name: keyof Start, where: string): number | undefined =>
    typed[name].trim() === start[name] ? undefined : amount(typed[name], where)
  const content: Valued = {
    kind: 'valued',
    workingMinor: changed('working', 'workingMinor'),
    sparesMinor: changed('spares', 'sparesMinor'),
    hourMinor: changed('hour', 'hourMinor'),
    parts: typed.part === '' ? [] : [{ part: typed.part, priceMinor: amount(typed.partPrice, 'priceMinor') }],
  }
  return { content, wrong }
}
