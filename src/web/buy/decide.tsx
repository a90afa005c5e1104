import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import type { AdvertState } from '../../bench/adverts/advert-state.ts'
import { sourceIds, whereFrom, type WhereFrom } from '../../facts/where-from.ts'
import { newId } from '../api.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { goTo } from '../router.tsx'
import { buyMachine, writeAdvert } from './api.ts'
import { useSending } from './use-sending.ts'

/** What becomes of an open advert: bought, and its machine is on the bench with all that is known; or passed by. */
export const Decide = ({ state }: { readonly state: AdvertState }) => (
  <>
    <Buy state={state} />
    <Fold title="Passed it by">
      <Pass state={state} />
    </Fold>
  </>
)

const Buy = ({ state }: { readonly state: AdvertState }) => {
  const [paid, setPaid] = useState((state.advert.askingMinor / 100).toFixed(2))
  const [model, setModel] = useState('')
  const [source, setSource] = useState<WhereFrom>('classified')
  const [machine] = useState(() => newId('machine'))
  const { problems, busy, run } = useSending()
  const buy = (): Promise<boolean> =>
    run(async () => {
      const paidMinor = moneyFromText(paid)
      if (paidMinor === null) return { kind: 'refused', problems: [notMoney(paid)] }
      const asked = { id: machine, version: state.version, paidMinor, source, ...(model.trim() === '' ? {} : { model: model.trim() }) } // prettier-ignore
      const answer = await buyMachine(state.id, asked)
      if (answer.kind === 'ok') goTo({ kind: 'machine', bench: 'own', id: answer.value.machine.state.id })
      return answer
    })
  return (
    <section aria-label="I bought it">
      <h2>I bought it</h2>
      <Field
        label="For"
        unit={state.advert.currency}
        value={paid}
        onChange={setPaid}
        inputMode="decimal"
        problems={problemsAt(problems, 'paidMinor')}
      />
      <Select label="Where from" value={source} onChange={(id) => setSource(id as WhereFrom)}>
        {sourceIds.map((id) => (
          <option key={id} value={id}>
            {whereFrom[id]}
          </option>
        ))}
      </Select>
      <Field label="Model on the plate, if you can read it" value={model} onChange={setModel} />
      <Problems problems={problemsElsewhere(problems, ['paidMinor'])} />
      <Button className="key enter" isDisabled={busy} onPress={() => void buy()}>
        Put it on the bench
      </Button>
      <p className="hint">
        What the seller said and you looked at goes with it. Keep it unplugged until the first checks.
      </p>
    </section>
  )
}

const Pass = ({ state }: { readonly state: AdvertState }) => {
  const [reason, setReason] = useState('')
  const { problems, busy, run } = useSending()
  const pass = (): Promise<boolean> =>
    run(() => writeAdvert(state.id, state.version, { kind: 'passed', reason: reason.trim() }))
  return (
    <>
      <Field label="Why, in a few words" value={reason} onChange={setReason} />
      <Problems problems={problems} />
      <Button className="key" isDisabled={busy} onPress={() => void pass()}>
        Passed it by
      </Button>
    </>
  )
}

const notMoney = (text: string): Problem =>
  problem('not-money', 'paidMinor', `“${text}” is not an amount of money`, 'Write it like 12.50')
