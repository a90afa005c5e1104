import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { gaugeMinutes } from '../../facts/air-rig.ts'
import type { Problem } from '../../base/problem.ts'
import { pressKey } from '../keypad.ts'
import { Digits } from '../machine/digits.tsx'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { useAirSheet } from './air-sheet.ts'
import { readingOf } from './draft.ts'
import { airflowUnits, suctionUnits } from './gauge-units.ts'
import { keptText, MoreSetUp } from './more-set-up.tsx'
import { isUnderMore, problemsOf } from './problem-place.ts'
import { OtherHole } from './set-up-choice.tsx'
import type { Draft } from './use-draft.ts'
import { VirtualGauge } from './virtual-gauge.tsx'

/** What the gauge shows: big keys, or typed and Enter. A slip is told at its field, and nothing written is lost. */
export const ReadingEntry = ({ draft }: { readonly draft: Draft }) => {
  const { text, change, problems, more, busy, submit } = useEntry(draft)
  return (
    // Presses do not bubble, so clicks are caught on their way down.
    <form className="entry" onSubmit={(event) => void submit(event)} aria-label="Enter the gauge reading">
      <VirtualGauge draft={draft} onRead={change} />
      <OtherHole draft={draft} problems={problemsOf(problems, 'opening')} />
      <Value draft={draft} text={text} onChange={change} problems={problems} />
      <div className="keypad">
        <Digits onPress={(key) => change(pressKey(text, key))} />
        <Units draft={draft} />
        <Button type="submit" className="key enter" isDisabled={busy}>
          Enter
        </Button>
      </div>
      <Problems problems={elsewhere(problems, draft)} />
      <Fold key={more.key} title={<MoreTitle draft={draft} />} startOpen={more.startOpen}>
        <MoreSetUp draft={draft} problems={problems} />
      </Fold>
    </form>
  )
}

const useEntry = (draft: Draft) => {
  const { bench, document, stale, units } = useAirSheet()
  const { write, busy, problems: refusals } = useNotes(bench, document.state.id)
  const [text, setText] = useState('')
  const [slips, setSlips] = useState<readonly Problem[] | null>(null)
  const [opened, setOpened] = useState(0)
  const change = (typed: string): void => {
    setText(typed)
    setSlips([])
    draft.hold()
  }
  const show = (found: readonly Problem[]): void => {
    setSlips(found)
    if (found.some(isUnderMore)) setOpened((turn) => turn + 1)
  }
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    if (busy || stale) return
    const shown = { text, suctionUnit: units.suction, airflowUnit: units.airflow }
    const reading = readingOf(draft.place, draft.kept, shown)
    if (reading.kind === 'refused') return show(reading.problems)
    const minutes = draft.known?.minutes ?? gaugeMinutes.value
    setSlips([])
    if (!(await write([{ kind: 'gauge', reading: reading.value, minutes }]))) return setSlips(null)
    say('Entered.')
    setText('')
    draft.setKept({ watts: '' })
    draft.release()
    // The answer stands at the top.
    window.document.getElementById('main')?.scrollIntoView()
  }
  // Until something is changed, what the bench refused stands at the fields.
  return { text, change, problems: slips ?? refusals, more: moreOf(opened, refusals), busy: busy || stale, submit }
}

/** A slip in a field that is folded away must be seen: the fold is laid down anew, open. */
const moreOf = (
  opened: number,
  refusals: readonly Problem[],
): { readonly key: string; readonly startOpen: boolean } => {
  const refused = refusals.some(isUnderMore)
  return { key: `${opened} ${refused}`, startOpen: opened > 0 || refused }
}

/** Problems of fields that are not on the page just now, and of none. */
const elsewhere = (problems: readonly Problem[], { place }: Draft): readonly Problem[] => [
  ...problemsOf(problems, null),
  ...problemsOf(problems, 'instrument'),
  ...problemsOf(problems, 'tapBefore'),
  ...problemsOf(problems, 'out'),
  ...(place.opening === 'other-hole' ? [] : problemsOf(problems, 'opening')),
]

type ValueProps = {
  readonly draft: Draft
  readonly text: string
  readonly onChange: (text: string) => void
  readonly problems: readonly Problem[]
}

const Value = ({ draft, text, onChange, problems }: ValueProps) => {
  const { units } = useAirSheet()
  const { measure } = draft.place
  const value = { value: text, onChange, problems: problemsOf(problems, 'read'), className: 'meter-shows' }
  switch (measure) {
    case 'suction':
      return <Field label="The gauge shows" unit={units.suction} inputMode="none" {...value} />
    case 'airflow':
      return <Field label="The vane shows" unit={units.airflow} inputMode="none" {...value} />
    case 'tone':
      return (
        <>
          <Field label="Pitch of this motor" unit="Hz" inputMode="none" {...value} />
          <Field
            label="The same tone of a sound one"
            value={draft.kept.sound}
            onChange={(sound) => draft.setKept({ sound })}
            unit="Hz"
            inputMode="decimal"
            problems={problemsOf(problems, 'read.soundHz')}
          />
        </>
      )
  }
}

const asOptions = <Unit extends string>(units: readonly Unit[]) => units.map((unit) => ({ id: unit, name: unit }))

const Units = ({ draft }: { readonly draft: Draft }) => {
  const { units } = useAirSheet()
  const look = { label: 'Unit', hideLabel: true, className: 'units gauge-units' } as const
  switch (draft.place.measure) {
    case 'suction':
      return <OneOf {...look} options={asOptions(suctionUnits)} chosen={units.suction} onChange={units.setSuction} />
    case 'airflow':
      return <OneOf {...look} options={asOptions(airflowUnits)} chosen={units.airflow} onChange={units.setAirflow} />
    case 'tone':
      return null
  }
}

const MoreTitle = ({ draft: { kept } }: { readonly draft: Draft }) => {
  const text = keptText(kept)
  return (
    <>
      More: further in, mains, weather, plate
      {text === '' ? null : <span className="quiet"> (kept: {text})</span>}
    </>
  )
}
