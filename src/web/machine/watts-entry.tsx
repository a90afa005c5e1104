import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { problem, type Problem } from '../../base/problem.ts'
import { quantityFromText } from '../../base/units.ts'
import type { GradedCheck } from '../../blueprint/schema.ts'
import { outcomeOfWatts, resultOfWatts, wattBands, wattBandText } from '../../machine/scale.ts'
import type { CheckMove } from '../../machine/view.ts'
import { pressKey } from '../keypad.ts'
import { Field } from '../parts/field.tsx'
import { Problems } from '../parts/problems.tsx'
import { CoversNoted } from './covers-noted.tsx'
import { Digits } from './digits.tsx'
import { useSheet } from './sheet.ts'
import { TakeReading } from './take-reading.tsx'
import { useReading } from './use-reading.ts'

type WattsEntryProps = { readonly move: CheckMove; readonly check: GradedCheck; readonly onDone: () => void }

/** The number of watts on the power meter: what it stands for under this plate shows beside it before it is entered. */
export const WattsEntry = ({ move, check, onDone }: WattsEntryProps) => {
  const { powerW } = useSheet().document.state.plate
  const { enter, busy, problems } = useReading(move, onDone)
  const [entry, setEntry] = useState('')
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const change = (text: string): void => {
    setEntry(text)
    setSlips([])
  }
  const watts = entry.trim() === '' ? null : quantityFromText(entry, 'powerW', 'power')
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    if (busy) return
    if (watts === null) return setSlips([nothingEntered])
    const result = watts.kind === 'ok' ? resultOfWatts(check, powerW, watts.value) : watts
    if (result.kind === 'refused') setSlips(result.problems)
    else if (await enter(result.value)) setEntry('')
  }
  return (
    <form className="entry" onSubmit={(event) => void submit(event)} aria-label="Enter the watts">
      <TakeReading move={move} enter={enter} busy={busy} />
      <CoversNoted move={move} />
      <Field
        label={check.scale?.asks ?? 'The power meter shows'}
        value={entry}
        onChange={change}
        unit="W"
        inputMode="none"
        problems={slips}
        className="meter-shows"
      />
      <Bands check={check} powerW={powerW} watts={watts?.kind === 'ok' ? watts.value : null} />
      <div className="keypad whole">
        <Digits onPress={(key) => change(pressKey(entry, key))} />
        <Button type="submit" className="key enter" isDisabled={busy}>
          Enter
        </Button>
      </div>
      <div className="no-number whole">
        <Button className="key" isDisabled={busy} onPress={() => void enter({ kind: 'cannot-tell' })}>
          could not tell
        </Button>
      </div>
      <Problems problems={problems} />
    </form>
  )
}

const nothingEntered = problem('empty', 'power', 'Nothing is entered yet', 'Type the watts that the power meter shows')

type BandsProps = { readonly check: GradedCheck; readonly powerW: number; readonly watts: number | null }

/** What counts as what on this plate; the band of the number typed is marked. */
const Bands = ({ check, powerW, watts }: BandsProps) => {
  const { scale } = check
  if (scale === undefined) return null
  const now = watts === null ? null : outcomeOfWatts(scale, powerW, watts)
  return (
    <dl className="expected bands" aria-label={`On this plate of ${powerW} W`}>
      {wattBands(scale, powerW).map((band) => (
        <div key={band.outcome} aria-current={band.outcome === now ? 'true' : undefined}>
          <dt>{check.outcomes.find(({ id }) => id === band.outcome)?.name ?? band.outcome}</dt>
          <dd className="figure">{wattBandText(band)}</dd>
        </div>
      ))}
    </dl>
  )
}
