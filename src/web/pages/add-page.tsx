import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { currencies, type Currency } from '../../base/money.ts'
import type { Problem } from '../../base/problem.ts'
import type { BlueprintEntry } from '../../blueprint/entry.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { complaintsOf } from '../../blueprint/entry.ts'
import { complaintIds, complaints, type Complaint } from '../../facts/complaints.ts'
import { contentFromDraft, draftFromText, emptyDraft, withBlueprint, withSettings, type Draft } from '../add/draft.ts'
import { LifeFields } from '../add/life-fields.tsx'
import { WhichMachine } from '../add/which-machine.tsx'
import { addMachine, newId } from '../api.ts'
import { Chips } from '../parts/chips.tsx'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { Loading } from '../parts/loading.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { machineKey, machinesKey, useBlueprint, useBlueprints, useSettings } from '../queries.ts'
import { goTo, PageTitle } from '../router.tsx'
import { readStored, writeStored } from '../stored.ts'

const storedName = 'thrum-add'
const fields = [
  'name',
  'model',
  'blueprint',
  'voltageV',
  'frequencyHz',
  'powerW',
  'massKg',
  'ageYears',
  'paidMinor',
  'hourMinor',
  'claim',
]

/** A machine on the bench in under a minute: everything but the complaint is filled in already. */
export const AddPage = () => {
  const [draft, setDraft] = useState<Draft>(() => draftFromText(readStored('session', storedName)) ?? emptyDraft)
  const { data: blueprints, error } = useBlueprints()
  const { data: blueprint } = useBlueprint(draft.blueprint)
  const { problems, busy, submit } = useAdding(draft)
  const change = (part: Partial<Draft>): void => setDraft((before) => ({ ...before, ...part }))
  useEffect(() => writeStored('session', storedName, JSON.stringify(draft)), [draft])
  useChosenBlueprint(draft, blueprints, setDraft)
  const { data: settings } = useSettings()
  useEffect(() => {
    if (settings !== undefined) setDraft((before) => withSettings(before, settings))
  }, [settings])
  if (blueprints === undefined) {
    return (
      <div className="sheet">
        <PageTitle windowTitle="Add a machine">Add a machine</PageTitle>
        <Loading what="the blueprints" error={error} />
      </div>
    )
  }
  return (
    <form className="sheet add" onSubmit={(event) => void submit(event)} aria-label="Add a machine" noValidate>
      <PageTitle windowTitle="Add a machine">Add a machine</PageTitle>
      <WhichMachine entries={blueprints} draft={draft} change={change} problems={problemsAt(problems, 'blueprint')} />
      <Chips
        label="What does it do wrong? As many as hold."
        options={offered(blueprint, draft).map((id) => ({ id, name: complaints[id] }))}
        chosen={draft.complaints}
        onChange={(chosen) => change({ complaints: chosen })}
      />
      <MoneyFields draft={draft} change={change} problems={problems} />
      <Field
        label="What the seller said"
        value={draft.claim}
        onChange={(claim) => change({ claim })}
        long
        problems={problemsAt(problems, 'claim')}
      />
      <Field
        label="Name"
        value={draft.name}
        onChange={(name) => change({ name })}
        hint="Any words you will know it by."
        problems={problemsAt(problems, 'name')}
      />
      <PlateFields draft={draft} change={change} problems={problems} />
      {blueprint === undefined ? null : (
        <Fold title={draft.missing.length === 0 ? 'Parts missing: none' : `Parts missing: ${draft.missing.length}`}>
          <Chips
            label="Not there"
            options={blueprint.parts}
            chosen={draft.missing}
            onChange={(missing) => change({ missing })}
          />
        </Fold>
      )}
      <Problems problems={problemsElsewhere(problems, fields)} />
      <Button type="submit" className="key enter" isDisabled={busy}>
        Put it on the bench
      </Button>
    </form>
  )
}

/** Chooses the only blueprint where there is one, and brings in the plate of a newly chosen one. */
const useChosenBlueprint = (
  draft: Draft,
  entries: readonly BlueprintEntry[] | undefined,
  setDraft: (change: (before: Draft) => Draft) => void,
): void => {
  const wanted = entries?.length === 1 ? entries[0].id : draft.blueprint
  useEffect(() => {
    const entry = entries?.find(({ id }) => id === wanted)
    if (entry !== undefined)
      setDraft((before) => (before.platedFor === entry.id ? before : withBlueprint(before, entry)))
  }, [entries, wanted, setDraft])
}

const useAdding = (draft: Draft) => {
  const client = useQueryClient()
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const content = contentFromDraft(draft)
    if (content.kind === 'refused') {
      setProblems(content.problems)
      focusFirstWrong()
      return
    }
    setBusy(true)
    const answer = await addMachine('own', newId('machine'), content.value)
    setBusy(false)
    if (answer.kind === 'refused') {
      setProblems(answer.problems)
      focusFirstWrong()
      return
    }
    const { state } = answer.value
    writeStored('session', storedName, null)
    client.setQueryData(machineKey('own', state.id), answer.value)
    void client.invalidateQueries({ queryKey: machinesKey('own') })
    goTo({ kind: 'machine', bench: 'own', id: state.id })
  }
  return { problems, busy, submit }
}

const focusFirstWrong = (): void => {
  // After the problems are on the page.
  window.setTimeout(
    () => document.querySelector<HTMLElement>('form.add [data-wrong], form.add [aria-invalid="true"]')?.focus(),
    0,
  )
}

/** What a machine of this kind can do wrong; what was chosen before another kind was picked stays in sight. */
const offered = (blueprint: Blueprint | undefined, { complaints: chosen }: Draft): readonly Complaint[] => {
  const fitting = blueprint === undefined ? complaintIds : complaintsOf(blueprint)
  return complaintIds.filter((id) => fitting.includes(id) || chosen.includes(id))
}

type PartProps = {
  readonly draft: Draft
  readonly change: (part: Partial<Draft>) => void
  readonly problems: readonly Problem[]
}

const MoneyFields = ({ draft, change, problems }: PartProps) => (
  <div className="field-row three">
    <Field
      label="Paid"
      value={draft.paid}
      onChange={(paid) => change({ paid })}
      inputMode="decimal"
      problems={problemsAt(problems, 'paidMinor')}
    />
    <Select label="Money" value={draft.currency} onChange={(currency) => change({ currency: currency as Currency })}>
      {currencies.map((currency) => (
        <option key={currency}>{currency}</option>
      ))}
    </Select>
    <Field
      label="Your hour"
      value={draft.hour}
      onChange={(hour) => change({ hour })}
      inputMode="decimal"
      problems={problemsAt(problems, 'hourMinor')}
    />
  </div>
)

const classes = [
  { id: 'I' as const, name: 'I, earthed' },
  { id: 'II' as const, name: 'II, double square' },
]

const PlateFields = ({ draft, change, problems }: PartProps) => (
  <fieldset className="plate">
    <legend>Rating plate</legend>
    <Field
      label="Model on the plate, if you can read it"
      value={draft.model}
      onChange={(model) => change({ model })}
      hint="Machines of one model share their prices."
      problems={problemsAt(problems, 'model')}
    />
    <div className="field-row">
      <Field
        label="Voltage"
        unit="V"
        value={draft.voltage}
        onChange={(voltage) => change({ voltage })}
        inputMode="decimal"
        problems={problemsAt(problems, 'voltageV')}
      />
      <Field
        label="Frequency"
        unit="Hz"
        value={draft.frequency}
        onChange={(frequency) => change({ frequency })}
        inputMode="decimal"
        problems={problemsAt(problems, 'frequencyHz')}
      />
      <Field
        label="Power"
        unit="W"
        value={draft.power}
        onChange={(power) => change({ power })}
        inputMode="decimal"
        problems={problemsAt(problems, 'powerW')}
      />
      <Field
        label="Mass"
        unit="kg"
        value={draft.mass}
        onChange={(mass) => change({ mass })}
        inputMode="decimal"
        problems={problemsAt(problems, 'massKg')}
      />
    </div>
    <OneOf
      label="Protection class"
      options={classes}
      chosen={draft.protectionClass}
      onChange={(protectionClass) => change({ protectionClass })}
    />
    <LifeFields draft={draft} change={change} problems={problems} />
  </fieldset>
)
