import type { Problem } from '../../base/problem.ts'
import type { ProofStepView } from '../../machine/proof/proof-view.ts'
import { OneOf } from '../parts/one-of.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt } from '../problems-at.ts'
import { DayField } from './day-field.tsx'
import { lastUsed } from './kept.ts'
import { measuredAs, voltagesOf } from './measured.ts'
import { OwnSpecification } from './own-specification.tsx'
import { useProofSheet } from './proof-sheet.ts'
import { instrumentChosen, ownId, type ReadingDraft } from './reading-draft.ts'

type InstrumentChoiceProps = {
  readonly step: ProofStepView
  readonly draft: ReadingDraft
  readonly onChange: (part: Partial<ReadingDraft>) => void
  readonly problems: readonly Problem[]
}

/** With which instrument: one that measures it, the last used first, or another with its own specification. */
export const InstrumentChoice = ({ step, draft, onChange, problems }: InstrumentChoiceProps) => {
  const limit = step.limits.find(({ quantity }) => quantity === draft.quantity)
  const volts = voltagesOf(draft.instrument, draft.quantity)
  return (
    <>
      <Select
        label="Instrument"
        value={draft.instrument}
        onChange={(instrument) => onChange(instrumentChosen(instrument, draft.own, limit))}
        problems={problemsAt(problems, 'instrument')}
      >
        {draft.instrument === '' ? <option value="">Choose it</option> : null}
        {useListed(draft).map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
        <option value={ownId}>Another, by its specification</option>
      </Select>
      {draft.instrument === ownId ? (
        <OwnSpecification
          draft={draft}
          onChange={(own) => onChange({ own: { ...draft.own, ...own } })}
          problems={problems}
        />
      ) : null}
      {volts.length === 0 ? null : (
        <OneOf
          label="Test voltage"
          options={volts.map((volt) => ({ id: String(volt), name: `${volt} V` }))}
          chosen={String(draft.testVoltageV)}
          onChange={(volt) => onChange({ testVoltageV: Number(volt) })}
        />
      )}
      <DayField
        label="The instrument was last checked on"
        value={draft.checkedOn}
        onChange={(checkedOn) => onChange({ checkedOn })}
        hint="Left empty where nobody knows. Kept on this device, and it stands on the record."
        problems={problemsAt(problems, 'checkedOn')}
      />
    </>
  )
}

/** Those that measure it, the last used first. */
const useListed = ({ quantity }: ReadingDraft) => {
  const { instruments } = useProofSheet().proof
  const { measures } = measuredAs(quantity)
  const used = lastUsed(measures)
  const place = (id: string): number => (used.includes(id) ? used.indexOf(id) : used.length)
  return instruments.filter((one) => one.measures.includes(measures)).sort((a, b) => place(a.id) - place(b.id))
}
