import { useEffect, useRef, useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { ProofStepView } from '../../machine/proof/proof-view.ts'
import { pressKey } from '../keypad.ts'
import { Digits } from '../machine/digits.tsx'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { capital } from '../words.ts'
import { InstrumentChoice } from './instrument-choice.tsx'
import { checkedName, draftFor, ownId, readingOf, type ReadingDraft } from './reading-draft.ts'
import { keepLastChecked, keepLastUsed, keepOwn } from './kept.ts'
import { measuredAs } from './measured.ts'
import { useFinding } from './use-finding.ts'

export type ReadingProps = {
  readonly step: ProofStepView
  readonly draft: ReadingDraft
  readonly onDraft: (draft: ReadingDraft) => void
}

const shownWays = [
  { id: 'figure', name: 'just that' },
  { id: 'above', name: 'more than' },
  { id: 'below', name: 'less than' },
] as const

/** What the instrument showed, where, and with which: a slip is told at its field, and nothing written is lost. */
export const ReadingEntry = ({ step, draft, onDraft }: ReadingProps) => {
  const { problems, busy, change, enter } = useEntry(step, draft, onDraft)
  const form = useFocusOnSlip(problems)
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    void enter(false)
  }
  return (
    <form ref={form} className="entry" onSubmit={submit} aria-label={`Enter the reading: ${step.title}`} noValidate>
      <WhatAndWhere step={step} draft={draft} onChange={change} problems={problems} />
      <InstrumentChoice step={step} draft={draft} onChange={change} problems={problems} />
      <Field
        label="The instrument showed"
        value={draft.text}
        onChange={(text) => change({ text })}
        unit={draft.unit}
        inputMode="none"
        problems={problemsAt(problems, 'value')}
        className="meter-shows"
      />
      <div className="keypad">
        <Digits onPress={(key) => change({ text: pressKey(draft.text, key) })} />
        <OneOf
          label="Unit"
          hideLabel
          options={measuredAs(draft.quantity).units.map((unit) => ({ id: unit, name: unit }))}
          chosen={draft.unit}
          onChange={(unit) => change({ unit })}
          className="units proof-units"
        />
      </div>
      <OneOf
        label="It is"
        options={shownWays}
        chosen={draft.shown}
        onChange={(shown) => change({ shown })}
        className="proof-shown"
      />
      <Button type="submit" className="key enter" isDisabled={busy}>
        Enter
      </Button>
      <div className="no-number whole">
        <Button className="key" isDisabled={busy} onPress={() => void enter(true)}>
          beyond its range
        </Button>
      </div>
      <Problems problems={problemsElsewhere(problems, fieldNames)} />
    </form>
  )
}

const fieldNames = [
  'part',
  'value',
  'instrument',
  'checkedOn',
  ...['name', 'percent', 'digits', 'range', 'resolution', 'testVoltage', 'testCurrent'].map((one) => `own.${one}`),
]

const useEntry = (step: ProofStepView, draft: ReadingDraft, onDraft: (draft: ReadingDraft) => void) => {
  const { enter: write, busy, problems: refusals } = useFinding()
  const [slips, setSlips] = useState<readonly Problem[] | null>(null)
  const change = (part: Partial<ReadingDraft>): void => {
    onDraft({ ...draft, ...part })
    setSlips([])
  }
  const enter = async (beyond: boolean): Promise<void> => {
    if (busy) return
    const reading = readingOf(draft, beyond, today())
    if (reading.kind === 'refused') return setSlips(reading.problems)
    setSlips(null)
    remember(draft)
    if (!(await write(reading.value))) return
    say(`${step.title}: entered.`)
    onDraft({ ...draft, text: '', shown: 'figure' })
  }
  // Until something is changed, what the bench refused stands at the fields.
  return { problems: slips ?? refusals, busy, change, enter }
}

/** Today by the clock of this device, as 2026-03-14: Swedish dates are written so. */
const today = (): string => new Date().toLocaleDateString('sv-SE')

/** The form is longer than a phone is high: the first field that is wrong comes into sight. */
const useFocusOnSlip = (problems: readonly Problem[]) => {
  const form = useRef<HTMLFormElement>(null)
  useEffect(() => {
    if (problems.length > 0) form.current?.querySelector<HTMLElement>('[aria-invalid=true]')?.focus()
  }, [problems])
  return form
}

const remember = ({ quantity, instrument, own, checkedOn }: ReadingDraft): void => {
  const { measures } = measuredAs(quantity)
  keepLastUsed(measures, instrument)
  keepLastChecked(checkedName(instrument, own), checkedOn)
  if (instrument === ownId) keepOwn(measures, own)
}

type PartProps = {
  readonly step: ProofStepView
  readonly draft: ReadingDraft
  readonly onChange: (part: Partial<ReadingDraft>) => void
  readonly problems: readonly Problem[]
}

const WhatAndWhere = ({ step, draft, onChange, problems }: PartProps) => (
  <>
    {step.limits.length < 2 ? null : (
      <OneOf
        label="What was measured"
        options={step.limits.map(({ quantity, name }) => ({ id: quantity, name: capital(name) }))}
        chosen={draft.quantity}
        onChange={(quantity) => onChange(draftFor(step.limits.find((limit) => limit.quantity === quantity)))}
        className="proof-quantities"
      />
    )}
    <Field
      label="Taken at"
      value={draft.part}
      onChange={(part) => onChange({ part })}
      hint="Each metal part has an entry of its own where they differ."
      problems={problemsAt(problems, 'part')}
    />
  </>
)
