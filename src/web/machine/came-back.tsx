import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { quantityFromText } from '../../base/units.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useNotes } from '../use-notes.ts'
import { useSheet } from './sheet.ts'

/** On a sold machine: the buyer brought it back, and it is in hand again. */
export const CameBack = () => (
  <Fold title="It came back">
    <CameBackForm />
  </Fold>
)

const CameBackForm = () => {
  const { bench, document, stale } = useSheet()
  const { state } = document
  const { write, busy, problems } = useNotes(bench, state.id)
  const [refund, setRefund] = useState('')
  const [minutes, setMinutes] = useState('0')
  const [text, setText] = useState('')
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const refundMinor = moneyFromText(refund)
    const took = quantityFromText(minutes, 'durationMin', 'minutes')
    const wrong = [...(refundMinor === null ? [notMoney] : []), ...(took.kind === 'refused' ? took.problems : [])]
    setSlips(wrong)
    if (refundMinor === null || took.kind === 'refused') return
    const content = { kind: 'came-back' as const, refundMinor, minutes: took.value, text: text.trim() }
    if (await write([content])) say('It is in hand again.')
  }
  const all = [...slips, ...problems]
  return (
    <form className="entry" onSubmit={(event) => void submit(event)} aria-label="Note that it came back" noValidate>
      <div className="field-row">
        <Field
          label="Money given back"
          value={refund}
          onChange={setRefund}
          unit={state.currency}
          inputMode="decimal"
          hint="0 for nothing"
          problems={problemsAt(all, 'refundMinor')}
        />
        <Field
          label="Minutes it took"
          value={minutes}
          onChange={setMinutes}
          unit="min"
          inputMode="decimal"
          problems={problemsAt(all, 'minutes')}
        />
      </div>
      <Field label="Why it came back" value={text} onChange={setText} long />
      <Problems problems={problemsElsewhere(all, ['refundMinor', 'minutes'])} />
      <Button type="submit" className="key enter" isDisabled={busy || stale}>
        It is in hand again
      </Button>
    </form>
  )
}

const notMoney = problem('not-money', 'refundMinor', 'No amount of money is entered', 'Write it like 20.00')
