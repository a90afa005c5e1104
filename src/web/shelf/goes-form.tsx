import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { PartContentInput } from '../../bench/shelf/part-note.ts'
import type { PartState } from '../../bench/shelf/part-state.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { usePartWriter } from './use-part-writer.ts'

type GoesProps = { readonly bench: BenchId; readonly state: PartState; readonly what: 'sold' | 'scrapped' | 'counted' }

const buttons = { sold: 'Sold', scrapped: 'Scrapped', counted: 'So many are there' } as const

/** How many of a part went and what came for them, or how many there are. */
export const GoesForm = ({ bench, state, what }: GoesProps) => {
  const { add, busy, problems } = usePartWriter(bench)
  const [draft, setDraft] = useState({
    count: '1',
    receivedMinor: '',
    feeMinor: '0',
    postageMinor: '0',
    minutes: '0',
    reason: '',
  })
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const set = (field: keyof typeof draft) => (value: string) => setDraft((before) => ({ ...before, [field]: value }))
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const wrong =
      what === 'sold' ? moneyFields.filter((field) => moneyFromText(draft[field]) === null).map(noMoney) : []
    setSlips(wrong)
    if (wrong.length > 0) return
    if (await add(state.id, state.version, contentOf(what, draft))) say('Noted.')
  }
  const all = [...slips, ...problems]
  const field = (id: keyof typeof draft, label: string, unit?: string) => (
    <Field
      label={label}
      value={draft[id]}
      onChange={set(id)}
      unit={unit}
      inputMode={id === 'reason' ? 'text' : 'decimal'}
      problems={problemsAt(all, id)}
    />
  )
  return (
    <form className="entry" onSubmit={(event) => void submit(event)} aria-label={buttons[what]}>
      <div className="field-row">
        {field('count', what === 'counted' ? 'How many are there' : 'How many')}
        {what === 'sold' ? field('receivedMinor', 'Money received', state.currency) : field('reason', 'Why')}
        {what === 'sold' ? field('feeMinor', 'Fee', state.currency) : null}
        {what === 'sold' ? field('postageMinor', 'Postage you paid', state.currency) : null}
        {what === 'sold' ? field('minutes', 'Minutes', 'min') : null}
      </div>
      <Problems problems={problemsElsewhere(all, Object.keys(draft))} />
      <Button type="submit" className="key enter" isDisabled={busy}>
        {buttons[what]}
      </Button>
    </form>
  )
}

const moneyFields = ['receivedMinor', 'feeMinor', 'postageMinor'] as const

const noMoney = (where: string): Problem =>
  problem('not-money', where, 'That is not an amount of money', 'Write it like 4.50')

type Draft = Readonly<Record<(typeof moneyFields)[number] | 'count' | 'minutes' | 'reason', string>>

const contentOf = (what: GoesProps['what'], draft: Draft): PartContentInput => {
  const count = Number(draft.count)
  if (what !== 'sold') return { kind: what, count, reason: draft.reason }
  const money = (field: (typeof moneyFields)[number]): number => moneyFromText(draft[field]) ?? 0
  return {
    kind: 'sold',
    count,
    receivedMinor: money('receivedMinor'),
    feeMinor: money('feeMinor'),
    postageMinor: money('postageMinor'),
    minutes: Number(draft.minutes),
  }
}
