import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { CheckMove } from '../../machine/view.ts'
import { ohmUnits, pressKey, readingFromEntry, unitFor } from '../keypad.ts'
import { Field } from '../parts/field.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { CoversNoted } from './covers-noted.tsx'
import { Digits } from './digits.tsx'
import { TakeReading } from './take-reading.tsx'
import { useReading } from './use-reading.ts'

const units = ohmUnits.map((unit) => ({ id: unit, name: unit }))

/** The number the meter shows, at arm's length: big keys, or typed and Enter. */
export const MeterEntry = ({ move, onDone }: { readonly move: CheckMove; readonly onDone: () => void }) => {
  const { enter, busy, problems } = useReading(move, onDone)
  const [entry, setEntry] = useState('')
  const [unit, setUnit] = useState(() => unitFor(move.expected))
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const change = (text: string): void => {
    setEntry(text)
    setSlips([])
  }
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    if (busy) return
    const reading = readingFromEntry(entry, unit)
    if (reading.kind === 'refused') setSlips(reading.problems)
    else if (await enter(reading.value)) setEntry('')
  }
  return (
    <form className="entry" onSubmit={(event) => void submit(event)} aria-label="Enter the reading">
      <TakeReading move={move} enter={enter} busy={busy} />
      <CoversNoted move={move} />
      <Field
        label="The meter shows"
        value={entry}
        onChange={change}
        unit={unit}
        inputMode="none"
        problems={slips}
        className="meter-shows"
      />
      <div className="keypad">
        <Digits onPress={(key) => change(pressKey(entry, key))} />
        <OneOf label="Unit" hideLabel options={units} chosen={unit} onChange={setUnit} className="units" />
        <Button type="submit" className="key enter" isDisabled={busy}>
          Enter
        </Button>
      </div>
      <div className="no-number">
        <Button className="key" isDisabled={busy} onPress={() => void enter({ kind: 'open' })}>
          open
        </Button>
        <Button className="key" isDisabled={busy} onPress={() => void enter({ kind: 'charging' })}>
          rises, then open
        </Button>
        <Button className="key" isDisabled={busy} onPress={() => void enter({ kind: 'jumps' })}>
          jumps when moved
        </Button>
        <Button className="key" isDisabled={busy} onPress={() => void enter({ kind: 'cannot-tell' })}>
          could not tell
        </Button>
      </div>
      <Problems problems={problems} />
    </form>
  )
}
