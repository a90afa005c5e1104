import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { PartCondition } from '../../bench/shelf/part-note.ts'
import { partKindIds, partKinds, type PartKind } from '../../facts/part-kinds.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useSettings } from '../queries.ts'
import { fieldsOf, specOfDraft, SpecFields, type SpecDraft } from './spec-fields.tsx'
import { usePartWriter } from './use-part-writer.ts'
import { conditionOptions } from './words.ts'

/** A part comes to the shelf: its kind first, then what that kind is measured by. */
export const PutForm = ({ bench }: { readonly bench: BenchId }) => {
  const currency = useSettings().data?.currency ?? 'GBP'
  const { put, busy, problems } = usePartWriter(bench)
  const [partKind, setKind] = useState<PartKind>('motor')
  const [spec, setSpec] = useState<SpecDraft>({})
  const [condition, setCondition] = useState<PartCondition>('untested')
  const [draft, setDraft] = useState(emptyDraft)
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const set = (field: keyof typeof emptyDraft) => (value: string) =>
    setDraft((before) => ({ ...before, [field]: value }))
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const costMinor = moneyFromText(draft.costMinor === '' ? '0' : draft.costMinor)
    const fetchesMinor = draft.fetchesMinor === '' ? undefined : moneyFromText(draft.fetchesMinor)
    const wrong = [
      ...(costMinor === null ? [noMoney('costMinor')] : []),
      ...(fetchesMinor === null ? [noMoney('fetchesMinor')] : []),
    ]
    setSlips(wrong)
    if (costMinor === null || fetchesMinor === null) return
    const origin = draft.bought.trim() === '' ? undefined : { kind: 'bought' as const, where: draft.bought }
    const name = draft.name.trim() === '' ? partKinds[partKind].name : draft.name
    const measures = { partKind, spec: specOfDraft(partKind, spec), condition }
    const rest = { currency, costMinor, count: Number(draft.count), place: draft.place, fetchesMinor }
    if (!(await put({ kind: 'put', name, ...measures, ...(origin === undefined ? {} : { origin }), ...rest }))) return
    say(`On the shelf: ${name}.`)
    setDraft({ ...emptyDraft, place: draft.place })
    setSpec({})
  }
  const all = [...slips, ...problems]
  const at = (field: string): readonly Problem[] => problemsAt(all, field)
  const shown = [
    'name',
    'place',
    'bought',
    'costMinor',
    'fetchesMinor',
    'count',
    ...fieldsOf(partKind).map(({ id }) => id),
  ]
  return (
    <form className="entry" onSubmit={(event) => void submit(event)} aria-label="Put a part on the shelf">
      <Select label="Kind" value={partKind} onChange={(kind) => setKind(kind as PartKind)}>
        {partKindIds.map((id) => (
          <option key={id} value={id}>
            {partKinds[id].name}
          </option>
        ))}
      </Select>
      <Field
        label="What to call it"
        value={draft.name}
        onChange={set('name')}
        hint={`left empty: ${partKinds[partKind].name}`}
        problems={at('name')}
      />
      <SpecFields partKind={partKind} draft={spec} onChange={setSpec} problems={all} />
      <OneOf label="Condition" options={conditionOptions} chosen={condition} onChange={setCondition} className="ways" />
      <div className="field-row">
        <Field label="Where it lies" value={draft.place} onChange={set('place')} problems={at('place')} />
        <Field
          label="How many"
          value={draft.count}
          onChange={set('count')}
          inputMode="numeric"
          problems={at('count')}
        />
        <Field
          label="Bought where"
          value={draft.bought}
          onChange={set('bought')}
          hint="left empty: it lay there"
          problems={at('bought')}
        />
        <Field
          label="Cost, all together"
          value={draft.costMinor}
          onChange={set('costMinor')}
          unit={currency}
          inputMode="decimal"
          problems={at('costMinor')}
        />
        <Field
          label="One would fetch"
          value={draft.fetchesMinor}
          onChange={set('fetchesMinor')}
          unit={currency}
          inputMode="decimal"
          problems={at('fetchesMinor')}
        />
      </div>
      <Problems problems={problemsElsewhere(all, shown)} />
      <Button type="submit" className="key enter" isDisabled={busy}>
        Put it on the shelf
      </Button>
    </form>
  )
}

const emptyDraft = { name: '', place: '', bought: '', costMinor: '', fetchesMinor: '', count: '1' }

const noMoney = (where: string): Problem =>
  problem('not-money', where, 'That is not an amount of money', 'Write it like 4.50')
