import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText, moneyText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { quantityFromText } from '../../base/units.ts'
import type { Repair } from '../../blueprint/schema.ts'
import type { RepairMove } from '../../machine/view.ts'
import { Chips } from '../parts/chips.tsx'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useNotes } from '../use-notes.ts'
import { CoversNoted } from './covers-noted.tsx'
import { coverNotes } from './entry-notes.ts'
import { useSheet } from './sheet.ts'

type Option = Repair['options'][number]

const middleCost = (option: Option | undefined): string =>
  option === undefined ? '0' : (Math.round((option.costMinor.low + option.costMinor.high) / 2) / 100).toFixed(2)

/** A repair as done: which way, how long, what it cost, and which faults were seen for certain. */
export const RepairEntry = ({ move, onDone }: { readonly move: RepairMove; readonly onDone: () => void }) => {
  const { bench, document, blueprint, stale } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const repair = blueprint.repairs.find((one) => one.id === move.repair)
  const optionNamed = (id: string): Option | undefined => repair?.options.find((one) => one.id === id)
  const [option, setOption] = useState(move.option)
  const [minutes, setMinutes] = useState(String(optionNamed(move.option)?.minutes ?? 0))
  const [cost, setCost] = useState(middleCost(optionNamed(move.option)))
  const [certain, setCertain] = useState<readonly string[]>([])
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const choose = (id: string): void => {
    setOption(id)
    setMinutes(String(optionNamed(id)?.minutes ?? 0))
    setCost(middleCost(optionNamed(id)))
  }
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const took = quantityFromText(minutes, 'durationMin', 'minutes')
    const costMinor = moneyFromText(cost)
    const wrong = took.kind === 'refused' ? [...took.problems] : []
    if (costMinor === null)
      wrong.push(problem('not-money', 'costMinor', `“${cost}” is not an amount of money`, 'Write it like 4.50'))
    setSlips(wrong)
    if (took.kind === 'refused' || costMinor === null) return
    const confirmed = certain.map((fault) => ({ kind: 'confirmed' as const, fault }))
    const done = { kind: 'repaired' as const, repair: move.repair, option, minutes: took.value, costMinor }
    if (!(await write([...coverNotes(move), ...confirmed, done]))) return
    say(`Noted as done: ${move.name}.`)
    onDone()
  }
  const all = [...slips, ...problems]
  const faults = move.removes.flatMap((id) => blueprint.faults.filter((fault) => fault.id === id))
  return (
    <form className="entry" onSubmit={(event) => void submit(event)} aria-label="Note the repair">
      <CoversNoted move={move} />
      <OneOf label="How" options={repair?.options ?? []} chosen={option} onChange={choose} className="ways" />
      <div className="field-row">
        <Field
          label="Minutes"
          value={minutes}
          onChange={setMinutes}
          unit="min"
          inputMode="decimal"
          problems={problemsAt(all, 'minutes')}
        />
        <Field
          label="Parts cost"
          value={cost}
          onChange={setCost}
          unit={document.state.currency}
          inputMode="decimal"
          hint={costRange(optionNamed(option), document.state.currency)}
          problems={problemsAt(all, 'costMinor')}
        />
      </div>
      <Chips label="Seen for certain" options={faults} chosen={certain} onChange={setCertain} />
      <Problems problems={problemsElsewhere(all, ['minutes', 'costMinor'])} />
      <Button type="submit" className="key enter" isDisabled={busy || stale}>
        Repair done
      </Button>
    </form>
  )
}

const costRange = (option: Option | undefined, currency: Parameters<typeof moneyText>[1]): string | undefined =>
  option === undefined
    ? undefined
    : `usually ${moneyText(option.costMinor.low, currency)} to ${moneyText(option.costMinor.high, currency)}`
