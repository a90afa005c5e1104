import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText, moneyText, type Currency } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { quantityFromText } from '../../base/units.ts'
import type { BenchId } from '../../bench/contract.ts'
import { addExpense, newId, Refusal, strikeExpense, type ExpenseList } from '../api.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { Loading } from '../parts/loading.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { calendarDay } from './month-words.ts'
import { useExpenses, useFreshBooks } from './use-books.ts'

type SpendingProps = { readonly bench: BenchId; readonly currency: Currency; readonly today: string }

/** What the bench spends on no machine in particular. */
export const Spending = (props: SpendingProps) => {
  const { data, error, hasNextPage, fetchNextPage } = useExpenses(props.bench)
  const items = data?.pages.flatMap((page) => page.items)
  return (
    <section className="books-part" aria-label="Spent on no machine">
      <h2>Spent on no machine</h2>
      <SpendingForm {...props} />
      {items === undefined ? (
        <Loading what="the spending" error={error} />
      ) : items.length === 0 ? null : (
        <Fold title={`What was spent: ${data?.pages[0]?.total ?? 0}`}>
          <ul className="ledger">
            {items.map((one) => (
              <Spent key={one.id} bench={props.bench} one={one} />
            ))}
          </ul>
          {hasNextPage ? (
            <Button className="key" onPress={() => void fetchNextPage()}>
              Show more
            </Button>
          ) : null}
        </Fold>
      )}
    </section>
  )
}

const SpendingForm = ({ bench, currency, today }: SpendingProps) => {
  const fresh = useFreshBooks(bench)
  const empty = { what: '', cost: '', day: today, minutes: '0' }
  const [typed, setTyped] = useState(empty)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const [id, setId] = useState(() => newId('spent'))
  const set = (name: keyof typeof typed) => (text: string) => setTyped((before) => ({ ...before, [name]: text }))
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const costMinor = moneyFromText(typed.cost)
    const minutes = quantityFromText(typed.minutes, 'durationMin', 'minutes')
    const wrong = [
      ...(typed.what.trim() === '' ? [noWords] : []),
      ...(costMinor === null || costMinor === 0 ? [notMoney] : []),
      ...(/^\d{4}-\d{2}-\d{2}$/.test(typed.day) ? [] : [notADay]),
      ...(minutes.kind === 'refused' ? minutes.problems : []),
    ]
    setProblems(wrong)
    if (wrong.length > 0 || costMinor === null || minutes.kind === 'refused') return
    setBusy(true)
    const { what, day } = typed
    const content = { kind: 'spent', what: what.trim(), costMinor, currency, day, minutes: minutes.value } as const
    const answer = await addExpense(bench, id, content)
    setBusy(false)
    if (answer.kind === 'refused') return setProblems(answer.problems)
    setTyped(empty)
    setId(newId('spent'))
    say('Spending noted.')
    await fresh()
  }
  const at = (field: string): readonly Problem[] => problemsAt(problems, field)
  return (
    <form onSubmit={(event) => void submit(event)} aria-label="Note spending" noValidate>
      <Field
        label="What for"
        value={typed.what}
        onChange={set('what')}
        hint="Tools, tape, a stall."
        problems={at('what')}
      />
      <div className="field-row">
        <Field
          label="Cost"
          value={typed.cost}
          onChange={set('cost')}
          unit={currency}
          inputMode="decimal"
          problems={at('costMinor')}
        />
        <Field label="Day" value={typed.day} onChange={set('day')} problems={at('day')} />
        <Field
          label="Time"
          value={typed.minutes}
          onChange={set('minutes')}
          unit="min"
          inputMode="decimal"
          problems={at('minutes')}
        />
      </div>
      <Problems problems={problemsElsewhere(problems, ['what', 'costMinor', 'day', 'minutes'])} />
      <Button type="submit" className="key" isDisabled={busy}>
        Note it
      </Button>
    </form>
  )
}

const noWords = problem('no-words', 'what', 'It is not said what it was for', 'Write a word or two')
const notMoney = problem('not-money', 'costMinor', 'No amount of money is entered', 'Write it like 4.50')
const notADay = problem('not-a-day', 'day', 'That is not a day', 'Write it like 2026-03-31')

type SpentProps = { readonly bench: BenchId; readonly one: ExpenseList['items'][number] }

const Spent = ({ bench, one }: SpentProps) => {
  const fresh = useFreshBooks(bench)
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const strike = async (): Promise<void> => {
    setBusy(true)
    try {
      const answer = await strikeExpense(bench, one.id, new AbortController().signal)
      if (answer.kind === 'refused') return setProblems(answer.problems)
      say('Struck out.')
      await fresh()
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      setProblems(error.problems)
    } finally {
      setBusy(false)
    }
  }
  return (
    <li className="spent">
      <span>
        {one.what}, <span className="quiet">{calendarDay(one.day)}</span>
      </span>
      <span className="figure">{moneyText(one.costMinor, one.currency)}</span>
      <Button className="plain" onPress={() => void strike()} isDisabled={busy} aria-label={`Strike out ${one.what}`}>
        Strike out
      </Button>
      <Problems problems={problems} />
    </li>
  )
}
