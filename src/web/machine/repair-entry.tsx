import { useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { moneyFromText, moneyText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { quantityFromText } from '../../base/units.ts'
import type { Repair } from '../../blueprint/schema.ts'
import type { ShelfOffer } from '../../machine/shelf/shelf-offer.ts'
import type { RepairMove } from '../../machine/view.ts'
import { Chips } from '../parts/chips.tsx'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { useNotes } from '../use-notes.ts'
import { shelfKey } from '../use-shelf.ts'
import { CoversNoted } from './covers-noted.tsx'
import { coverNotes } from './entry-notes.ts'
import { FromShelf } from './from-shelf.tsx'
import '../style/shelf.css'
import { useSheet } from './sheet.ts'

type Option = Repair['options'][number]

const middleCost = (option: Option | undefined): string =>
  option === undefined ? '0' : (Math.round((option.costMinor.low + option.costMinor.high) / 2) / 100).toFixed(2)

/** A repair as done: which way, how long, what it cost, and which faults were seen for certain. */
export const RepairEntry = ({ move, onDone }: { readonly move: RepairMove; readonly onDone: () => void }) => {
  const { bench, document, blueprint, view, stale } = useSheet()
  const client = useQueryClient()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const repair = blueprint.repairs.find((one) => one.id === move.repair)
  const optionNamed = (id: string): Option | undefined => repair?.options.find((one) => one.id === id)
  const [option, setOption] = useState(move.option)
  const [minutes, setMinutes] = useState(String(optionNamed(move.option)?.minutes ?? 0))
  const [cost, setCost] = useState(
    move.shelf === null ? middleCost(optionNamed(move.option)) : moneyField(move.shelf.costMinor),
  )
  const offers = (view?.shelf ?? []).filter(({ part }) => part === repair?.part)
  const [shelfPart, setShelfPart] = useState(move.shelf?.id ?? '')
  const [certain, setCertain] = useState<readonly string[]>([])
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const choose = (id: string): void => {
    setOption(id)
    setMinutes(String(optionNamed(id)?.minutes ?? 0))
    if (shelfPart === '' || !takesPart(id)) setCost(middleCost(optionNamed(id)))
    if (!takesPart(id)) setShelfPart('')
  }
  const take = (offer: ShelfOffer | null): void => {
    setShelfPart(offer?.id ?? '')
    setCost(offer === null ? middleCost(optionNamed(option)) : moneyField(offer.costMinor))
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
    const part = shelfPart === '' ? {} : { shelfPart }
    const done = { kind: 'repaired' as const, repair: move.repair, option, minutes: took.value, costMinor, ...part }
    if (!(await write([...coverNotes(move), ...confirmed, done]))) return
    if (shelfPart !== '') void client.invalidateQueries({ queryKey: shelfKey(bench) })
    say(`Noted as done: ${move.name}.`)
    onDone()
  }
  const all = [...slips, ...problems]
  const faults = move.removes.flatMap((id) => blueprint.faults.filter((fault) => fault.id === id))
  return (
    <form className="entry" onSubmit={(event) => void submit(event)} aria-label="Note the repair">
      <CoversNoted move={move} />
      <OneOf label="How" options={repair?.options ?? []} chosen={option} onChange={choose} className="ways" />
      {takesPart(option) ? (
        <FromShelf offers={offers} currency={document.state.currency} chosen={shelfPart} onChoose={take} />
      ) : null}
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
          hint={
            shelfPart === ''
              ? costRange(optionNamed(option), document.state.currency)
              : 'what it stands at on the shelf'
          }
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

/** Ways of repair that put another part in. */
const takesPart = (option: string): boolean => option === 'salvaged' || option === 'new'

const moneyField = (minor: number): string => (minor / 100).toFixed(2)

const costRange = (option: Option | undefined, currency: Parameters<typeof moneyText>[1]): string | undefined =>
  option === undefined
    ? undefined
    : `usually ${moneyText(option.costMinor.low, currency)} to ${moneyText(option.costMinor.high, currency)}`
