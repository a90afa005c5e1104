import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { ListedCable } from '../../engines/limits/index.ts'
import { cordTypes } from '../../facts/cords.ts'
import { newId } from '../api.ts'
import { Chips } from '../parts/chips.tsx'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Select } from '../parts/select.tsx'
import { cableOf, conditionNames, emptyCable, type CableDraft } from './cables.ts'
import { SizeOptions } from './size-options.tsx'

const conditions = Object.keys(conditionNames) as readonly ListedCable['condition'][]

/** A cable to try: what is not known is left open, and the answer says what to find out. */
export const CableForm = ({ onAdd }: { readonly onAdd: (cable: ListedCable) => void }) => {
  const [draft, setDraft] = useState(emptyCable)
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const set = (part: Partial<CableDraft>): void => {
    setDraft((before) => ({ ...before, ...part }))
    setSlips([])
  }
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const cable = cableOf(draft, newId('cable'))
    if (cable.kind === 'refused') return setSlips(cable.problems)
    onAdd(cable.value)
    setDraft(emptyCable)
    say('The cable is on the list.')
  }
  return (
    <form onSubmit={submit} aria-label="A cable to try" noValidate>
      <div className="field-row">
        <Select label="Size" value={draft.size} onChange={(size) => set({ size })}>
          <option value="">not known</option>
          <SizeOptions />
        </Select>
        <Select label="Type" value={draft.type} onChange={(type) => set({ type })}>
          <option value="">not known</option>
          {cordTypes.map(({ id }) => (
            <option key={id}>{id}</option>
          ))}
        </Select>
        <Select label="Number of cores" value={draft.cores} onChange={(cores) => set({ cores })}>
          <option value="">not counted</option>
          <option>2</option>
          <option>3</option>
        </Select>
        <Field
          label="Length of the cable"
          value={draft.length}
          onChange={(length) => set({ length })}
          unit="m"
          inputMode="decimal"
          problems={slips}
        />
      </div>
      <Select
        label="Condition"
        value={draft.condition}
        onChange={(condition) => set({ condition: condition as ListedCable['condition'] })}
      >
        {conditions.map((id) => (
          <option key={id} value={id}>
            {conditionNames[id]}
          </option>
        ))}
      </Select>
      <Chips
        label="Colours of its cores"
        options={[{ id: 'old', name: 'Of former times, such as red and black' }]}
        chosen={draft.hasOldColours ? ['old'] : []}
        onChange={(chosen) => set({ hasOldColours: chosen.length > 0 })}
      />
      <Button type="submit" className="key">
        Try this cable
      </Button>
    </form>
  )
}
