import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { Field } from '../parts/field.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt } from '../problems-at.ts'
import { optionNow, type EditDraft, type FixingDraft } from './edit-draft.ts'

type FieldsProps = {
  readonly blueprint: Blueprint
  readonly draft: EditDraft
  readonly problems: readonly Problem[]
  readonly onChange: (draft: EditDraft) => void
}

/** What has to be said for the chosen way of being different; nothing for what is simply not there. */
export const EditFields = (props: FieldsProps) => {
  const { draft } = props
  switch (draft.way) {
    case 'part-absent':
      return <p className="hint">Never built in. A part that was lost is “missing”, and stays in the blueprint.</p>
    case 'cover-absent':
      return <p className="hint">What was behind it is then behind the cover before it.</p>
    case 'part-moved':
      return <MovedFields {...props} />
    case 'cover-fixings':
      return <FixingFields {...props} />
    case 'renamed':
      return <TextField {...props} label="Its name here" />
    case 'part-note':
      return <TextField {...props} label="Note" long />
    case 'check-how':
      return <TextField {...props} label="How it is done here, plug out" long />
    case 'fault-share':
      return <ShareFields {...props} />
    case 'repair-cost':
      return <CostFields {...props} />
    case 'plate':
      return <PlateFields {...props} />
  }
}

const TextField = ({
  draft,
  problems,
  onChange,
  label,
  long = false,
}: FieldsProps & { readonly label: string; readonly long?: boolean }) => (
  <Field
    label={label}
    value={draft.text}
    onChange={(text) => onChange({ ...draft, text })}
    problems={problemsAt(problems, 'text')}
    long={long}
  />
)

const MovedFields = ({ blueprint, draft, onChange }: FieldsProps) => (
  <Select label="Behind" value={draft.cover} onChange={(cover) => onChange({ ...draft, cover })}>
    <option value="">no cover</option>
    {blueprint.covers.map(({ id, name }) => (
      <option key={id} value={id}>
        {name}
      </option>
    ))}
  </Select>
)

const noFixing: FixingDraft = { count: '', kind: '' }

const FixingFields = ({ draft, problems, onChange }: FieldsProps) => {
  const rows = draft.fixings.length === 0 ? [noFixing] : draft.fixings
  const change = (at: number, fixing: FixingDraft): void =>
    onChange({ ...draft, fixings: rows.map((row, i) => (i === at ? fixing : row)) })
  return (
    <>
      {rows.map((row, at) => (
        <div key={at} className="field-row fixing">
          <Field
            label="How many"
            value={row.count}
            onChange={(count) => change(at, { ...row, count })}
            inputMode="numeric"
            problems={problemsAt(problems, `fixings[${at}].count`)}
          />
          <Field
            label="Of what kind"
            value={row.kind}
            onChange={(kind) => change(at, { ...row, kind })}
            problems={problemsAt(problems, `fixings[${at}].kind`)}
          />
        </div>
      ))}
      <Button className="plain" onPress={() => onChange({ ...draft, fixings: [...rows, noFixing] })}>
        another kind of fixing
      </Button>
      <div className="field-row">
        <Field
          label="To open"
          value={draft.openMin}
          onChange={(openMin) => onChange({ ...draft, openMin })}
          unit="min"
          inputMode="decimal"
          problems={problemsAt(problems, 'openMin')}
        />
        <Field
          label="To close"
          value={draft.closeMin}
          onChange={(closeMin) => onChange({ ...draft, closeMin })}
          unit="min"
          inputMode="decimal"
          problems={problemsAt(problems, 'closeMin')}
        />
      </div>
    </>
  )
}

const ShareFields = ({ draft, problems, onChange }: FieldsProps) => (
  <div className="field-row">
    <Field
      label="In a hundred bought faulty"
      value={draft.perHundred}
      onChange={(perHundred) => onChange({ ...draft, perHundred })}
      inputMode="decimal"
      problems={problemsAt(problems, 'perHundred')}
    />
    <Field
      label="Left of the price if left in"
      value={draft.sharePercent}
      onChange={(sharePercent) => onChange({ ...draft, sharePercent })}
      unit="%"
      inputMode="decimal"
      problems={problemsAt(problems, 'sharePercent')}
    />
  </div>
)

const CostFields = ({ blueprint, draft, problems, onChange }: FieldsProps) => {
  const options = blueprint.repairs.find(({ id }) => id === draft.id)?.options ?? []
  const field = (label: string, name: 'costLow' | 'costHigh' | 'minutes', unit?: string) => (
    <Field
      label={label}
      value={draft[name]}
      onChange={(value) => onChange({ ...draft, [name]: value })}
      inputMode="decimal"
      problems={problemsAt(problems, name)}
      {...(unit === undefined ? {} : { unit })}
    />
  )
  return (
    <>
      <OneOf
        label="Which way of mending"
        options={options}
        chosen={draft.option as (typeof options)[number]['id']}
        onChange={(option) => onChange({ ...draft, ...optionNow(blueprint, draft.id, option) })}
        className="ways"
      />
      <div className="field-row">
        {field('Costs from', 'costLow')}
        {field('to', 'costHigh')}
      </div>
      {field('Takes', 'minutes', 'min')}
    </>
  )
}

const classes = [
  { id: 'I', name: 'I, earthed' },
  { id: 'II', name: 'II, double square' },
] as const

const PlateFields = ({ draft, problems, onChange }: FieldsProps) => {
  const field = (label: string, name: 'voltageV' | 'frequencyHz' | 'powerW', unit: string) => (
    <Field
      label={label}
      value={draft[name]}
      onChange={(value) => onChange({ ...draft, [name]: value })}
      unit={unit}
      inputMode="decimal"
      problems={problemsAt(problems, name)}
    />
  )
  return (
    <>
      <div className="field-row">
        {field('Volts', 'voltageV', 'V')}
        {field('Watts', 'powerW', 'W')}
      </div>
      {field('Frequency', 'frequencyHz', 'Hz')}
      <OneOf
        label="Protection class"
        options={classes}
        chosen={draft.protectionClass}
        onChange={(protectionClass) => onChange({ ...draft, protectionClass })}
      />
    </>
  )
}
