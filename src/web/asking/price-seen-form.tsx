import { useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import type { BenchId, MachineState } from '../../bench/contract.ts'
import type { PriceContentInput } from '../../bench/prices/price-note.ts'
import { grades, type Grade } from '../../facts/asking.ts'
import { addPrice, newId } from '../api.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { DayField } from '../proof/day-field.tsx'
import { pricesKey } from '../use-market.ts'

type Typed = {
  readonly sold: 'sold' | 'unsold'
  readonly price: string
  readonly day: string
  readonly days: string
  readonly grade: Grade
  readonly complete: string
  readonly model: string
  readonly place: string
}

const fields = ['priceMinor', 'day', 'days', 'completenessShare', 'model', 'place']
const gradeOptions = grades.map((id) => ({ id, name: id }))

/** A price of a machine like this one that was seen elsewhere. */
export const PriceSeenForm = ({
  bench,
  state,
  today,
}: {
  readonly bench: BenchId
  readonly state: MachineState
  readonly today: string
}) => {
  const start: Typed = {
    sold: 'sold',
    price: '',
    day: today,
    days: '',
    grade: 'B',
    complete: '100',
    model: state.model,
    place: '',
  }
  const client = useQueryClient()
  const [typed, setTyped] = useState(start)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const set =
    <Name extends keyof Typed>(name: Name) =>
    (value: Typed[Name]): void =>
      setTyped((before) => ({ ...before, [name]: value }))
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const { content, wrong } = contentOf(typed, state)
    setProblems(wrong)
    if (wrong.length > 0) return
    setBusy(true)
    const answer = await addPrice(bench, newId('price'), content)
    setBusy(false)
    if (answer.kind === 'refused') return setProblems(answer.problems)
    setTyped(start)
    say('Entered. The price to ask is worked out again.')
    await client.invalidateQueries({ queryKey: pricesKey(bench) })
  }
  return (
    <form onSubmit={(event) => void submit(event)} aria-label="A price seen" noValidate>
      <OneOf
        label="Did it sell?"
        options={[
          { id: 'sold', name: 'Sold' },
          { id: 'unsold', name: 'Not sold' },
        ]}
        chosen={typed.sold}
        onChange={set('sold')}
      />
      <div className="field-row">
        <Field
          label="Price"
          value={typed.price}
          onChange={set('price')}
          unit={state.currency}
          inputMode="decimal"
          problems={problemsAt(problems, 'priceMinor')}
        />
        <Field
          label="It stood for"
          value={typed.days}
          onChange={set('days')}
          unit="days"
          inputMode="decimal"
          problems={problemsAt(problems, 'days')}
        />
      </div>
      <DayField
        label={typed.sold === 'sold' ? 'Day it sold' : 'Day it was last seen'}
        value={typed.day}
        onChange={set('day')}
        hint="A sale counts half after a year."
        problems={problemsAt(problems, 'day')}
      />
      <OneOf label="Looks" options={gradeOptions} chosen={typed.grade} onChange={set('grade')} />
      <div className="field-row">
        <Field
          label="How complete"
          value={typed.complete}
          onChange={set('complete')}
          unit="%"
          inputMode="decimal"
          problems={problemsAt(problems, 'completenessShare')}
        />
        <Field label="Model" value={typed.model} onChange={set('model')} problems={problemsAt(problems, 'model')} />
      </div>
      <Field label="Where" value={typed.place} onChange={set('place')} problems={problemsAt(problems, 'place')} />
      <Problems problems={problemsElsewhere(problems, fields)} />
      <Button type="submit" className="key" isDisabled={busy}>
        Enter this price
      </Button>
    </form>
  )
}

type SeenInput = Extract<PriceContentInput, { kind: 'seen' }>

const contentOf = (
  typed: Typed,
  state: MachineState,
): { readonly content: SeenInput; readonly wrong: readonly Problem[] } => {
  const priceMinor = moneyFromText(typed.price)
  const days = numberOf(typed.days)
  const complete = numberOf(typed.complete)
  const wrong = [
    ...(priceMinor === null ? [notRead('priceMinor', typed.price, 'Write it like 45.00')] : []),
    ...(typed.days.trim() !== '' && days === null ? [notRead('days', typed.days, 'Write days, such as 12')] : []),
    ...(complete === null ? [notRead('completenessShare', typed.complete, 'Write per cent, such as 90')] : []),
  ]
  const content: SeenInput = {
    kind: 'seen',
    blueprint: state.blueprint,
    model: typed.model,
    priceMinor: priceMinor ?? 0,
    currency: state.currency,
    day: typed.day,
    sold: typed.sold === 'sold',
    ...(days === null ? {} : { days }),
    grade: typed.grade,
    completenessShare: (complete ?? 100) / 100,
    place: typed.place,
  }
  return { content, wrong }
}

const numberOf = (text: string): number | null =>
  /^\s*\d+(?:[.,]\d+)?\s*$/.test(text) ? Number(text.trim().replace(',', '.')) : null

const notRead = (where: string, text: string, mend: string): Problem =>
  problem('not-read', where, text.trim() === '' ? 'Nothing is entered here' : `“${text}” cannot be read`, mend)
