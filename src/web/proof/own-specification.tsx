import type { Problem } from '../../base/problem.ts'
import { Field } from '../parts/field.tsx'
import { problemsAt } from '../problems-at.ts'
import type { OwnInstrument } from './own-instrument.ts'
import type { ReadingDraft } from './reading-draft.ts'

type OwnSpecificationProps = {
  readonly draft: ReadingDraft
  readonly onChange: (part: Partial<OwnInstrument>) => void
  readonly problems: readonly Problem[]
}

/** The specification of an instrument from its manual: what its uncertainty is worked out from. */
export const OwnSpecification = ({ draft, onChange, problems }: OwnSpecificationProps) => {
  const { own, unit, quantity } = draft
  const field = (name: keyof OwnInstrument) => ({
    value: own[name],
    onChange: (text: string) => onChange({ [name]: text }),
    problems: problemsAt(problems, `own.${name}`),
  })
  return (
    <fieldset className="own-instrument">
      <legend>Its specification, from the manual</legend>
      <Field label="Name" {...field('name')} />
      <div className="field-row">
        <Field label="± of the reading" unit="%" inputMode="decimal" {...field('percent')} />
        <Field label="+ digits" inputMode="decimal" {...field('digits')} />
        <Field label="Range ends at" unit={unit} inputMode="decimal" {...field('range')} />
        <Field label="Last place" unit={unit} inputMode="decimal" {...field('resolution')} />
      </div>
      {quantity === 'insulation' ? (
        <Field label="Tests at" unit="V" inputMode="decimal" hint="DC, as it was set." {...field('testVoltage')} />
      ) : null}
      {quantity === 'earth-continuity' ? (
        <Field
          label="Drives a current of"
          unit="mA"
          inputMode="decimal"
          hint="Through the conductor under test. Null its leads first."
          {...field('testCurrent')}
        />
      ) : null}
    </fieldset>
  )
}
