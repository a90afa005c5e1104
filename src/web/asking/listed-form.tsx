import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText, moneyText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import type { BenchId, MachineState } from '../../bench/contract.ts'
import type { AskingView } from '../../machine/asking.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useNotes } from '../use-notes.ts'
import { dayText } from '../words.ts'

type ListedFormProps = { readonly bench: BenchId; readonly state: MachineState; readonly asking: AskingView }

/** That it is offered, at what price and where; how long it stands then tells what to ask for others. */
export const ListedForm = ({ bench, state, asking }: ListedFormProps) => {
  const { write, busy, problems } = useNotes(bench, state.id)
  const [typed, setTyped] = useState<string | null>(null)
  const [where, setWhere] = useState('')
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const price = typed ?? (asking.askMinor / 100).toFixed(2)
  const now = state.listed.find(({ to }) => to === null)
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const priceMinor = moneyFromText(price)
    setSlips(priceMinor === null ? [notMoney(price)] : [])
    if (priceMinor === null) return
    const content = { kind: 'listed' as const, priceMinor, where, grade: asking.choices.grade }
    if (await write([content])) say('Noted. Its days are counted from now.')
  }
  const all = [...slips, ...problems]
  return (
    <form onSubmit={(event) => void submit(event)} aria-label="It is offered" noValidate>
      {now === undefined ? null : (
        <p>
          Offered at {moneyText(now.priceMinor, state.currency)}
          {now.where === '' ? '' : `, ${now.where}`}, since {dayText(now.from)}.
        </p>
      )}
      <div className="field-row">
        <Field
          label="It is listed at"
          value={price}
          onChange={setTyped}
          unit={state.currency}
          inputMode="decimal"
          problems={problemsAt(all, 'priceMinor')}
        />
        <Field label="Where it is listed" value={where} onChange={setWhere} problems={problemsAt(all, 'where')} />
      </div>
      <Problems problems={problemsElsewhere(all, ['priceMinor', 'where'])} />
      <Button type="submit" className="key" isDisabled={busy}>
        Note that it is listed
      </Button>
    </form>
  )
}

const notMoney = (text: string): Problem =>
  problem('not-money', 'priceMinor', `“${text}” is not an amount of money`, 'Write it like 45.00')
