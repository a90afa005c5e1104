import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { PartState } from '../../bench/shelf/part-state.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { draftOfSpec, fieldsOf, specOfDraft, SpecFields } from './spec-fields.tsx'
import { usePartWriter } from './use-part-writer.ts'
import { conditionOptions } from './words.ts'

/** What came to be known of a part: everything as it should read from here on. */
export const DescribeForm = ({ bench, state }: { readonly bench: BenchId; readonly state: PartState }) => {
  const { add, busy, problems } = usePartWriter(bench)
  const [name, setName] = useState(state.name)
  const [place, setPlace] = useState(state.place)
  const [condition, setCondition] = useState(state.condition)
  const [spec, setSpec] = useState(draftOfSpec(state.spec))
  const [fetches, setFetches] = useState(state.fetchesMinor === null ? '' : (state.fetchesMinor / 100).toFixed(2))
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const fetchesMinor = fetches.trim() === '' ? undefined : moneyFromText(fetches)
    setSlips(fetchesMinor === null ? [noMoney] : [])
    if (fetchesMinor === null) return
    const content = {
      kind: 'described' as const,
      name,
      place,
      condition,
      spec: specOfDraft(state.partKind, spec),
      fetchesMinor,
    }
    if (await add(state.id, state.version, content)) say('Noted.')
  }
  const all = [...slips, ...problems]
  const shown = ['name', 'place', 'fetchesMinor', ...fieldsOf(state.partKind).map(({ id }) => id)]
  return (
    <form className="entry" onSubmit={(event) => void submit(event)} aria-label="Describe it">
      <Field label="What to call it" value={name} onChange={setName} problems={problemsAt(all, 'name')} />
      <SpecFields partKind={state.partKind} draft={spec} onChange={setSpec} problems={all} />
      <OneOf label="Condition" options={conditionOptions} chosen={condition} onChange={setCondition} className="ways" />
      <div className="field-row">
        <Field label="Where it lies" value={place} onChange={setPlace} problems={problemsAt(all, 'place')} />
        <Field
          label="One would fetch"
          value={fetches}
          onChange={setFetches}
          unit={state.currency}
          inputMode="decimal"
          problems={problemsAt(all, 'fetchesMinor')}
        />
      </div>
      <Problems problems={problemsElsewhere(all, shown)} />
      <Button type="submit" className="key enter" isDisabled={busy}>
        Note it
      </Button>
    </form>
  )
}

const noMoney = problem('not-money', 'fetchesMinor', 'That is not an amount of money', 'Write it like 4.50')
