import { useQuery } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import type { CopperAnswer, MeasuredCopper } from '../../machine/proof/cable-copper.ts'
import { engine } from '../engine-client.ts'
import { Chips } from '../parts/chips.tsx'
import { Field } from '../parts/field.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { copperDraftOf, measuredCopper, type CopperDraft } from './copper-draft.ts'
import { useProofSheet } from './proof-sheet.ts'
import { SizeOptions } from './size-options.tsx'

const fields = ['size', 'lengthM', 'reading', 'instrument', 'temperatureC'] as const

/** Is a salvaged cable's copper what it claims: one conductor measured from end to end, the answer in words. */
export const CopperCheck = () => {
  const { instruments, lead } = useProofSheet().proof
  const [draft, setDraft] = useState(() => copperDraftOf(lead?.size))
  const { answer, slips, ask, clear, busy } = useCopper()
  const set = (part: Partial<CopperDraft>): void => {
    setDraft((before) => ({ ...before, ...part }))
    clear()
  }
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    ask(draft)
  }
  const at = (field: (typeof fields)[number]): readonly Problem[] => problemsAt(slips, field)
  return (
    <form onSubmit={submit} aria-label="Is its copper what it claims" aria-busy={busy} noValidate>
      <p>
        Off the mains, both ends free. Measure each conductor from end to end and enter one after another. Of a
        multimeter type what it shows: its test leads are taken off here. A low-ohm tester is nulled first.
      </p>
      <div className="field-row">
        <Select label="Size it claims" value={draft.size} onChange={(size) => set({ size })} problems={at('size')}>
          <SizeOptions />
        </Select>
        <Field
          label="Length measured"
          value={draft.length}
          onChange={(length) => set({ length })}
          unit="m"
          inputMode="decimal"
          problems={at('lengthM')}
        />
        <Field
          label="One conductor reads"
          value={draft.resistance}
          onChange={(resistance) => set({ resistance })}
          unit="Ω"
          inputMode="decimal"
          problems={at('reading')}
        />
        <Field
          label="Its temperature"
          value={draft.temperature}
          onChange={(temperature) => set({ temperature })}
          unit="°C"
          inputMode="decimal"
          problems={at('temperatureC')}
        />
      </div>
      <Select
        label="Meter"
        value={draft.instrument}
        onChange={(instrument) => set({ instrument })}
        problems={at('instrument')}
      >
        {instruments
          .filter(({ measures }) => measures.includes('resistance'))
          .map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
      </Select>
      <Chips
        label="Measured through"
        options={[{ id: 'contacts', name: 'A plug, terminals or a reel' }]}
        chosen={draft.hasContacts ? ['contacts'] : []}
        onChange={(chosen) => set({ hasContacts: chosen.length > 0 })}
      />
      <Problems problems={problemsElsewhere(slips, fields)} />
      <Button type="submit" className="key">
        Judge its copper
      </Button>
      <div role="status">{answer === null ? null : <CopperWords answer={answer} />}</div>
    </form>
  )
}

const CopperWords = ({ answer: { kind, sentence, couldBe } }: { readonly answer: CopperAnswer }) => (
  <div className={`copper-answer ${kind}`} role="group" aria-label="What its copper is">
    <p>
      <strong>{sentence}</strong>
    </p>
    {couldBe.length === 0 ? null : (
      <p className="quiet">
        Sound copper of these sizes could read this: {couldBe.map((size) => size.replace('mm2', 'mm²')).join(', ')}.
      </p>
    )}
  </div>
)

/** Asks the engines once it is entered, by the same function as the command line. */
const useCopper = () => {
  const [measured, setMeasured] = useState<MeasuredCopper | null>(null)
  const [slips, setSlips] = useState<readonly Problem[]>([])
  const { data, isFetching } = useQuery({
    queryKey: ['copper', measured],
    queryFn: async ({ signal }) =>
      measured === null ? null : (await engine().ask({ kind: 'copper', measured }, signal)).copper,
    enabled: measured !== null,
    staleTime: Infinity,
    retry: false,
  })
  const asked = measured === null ? null : (data ?? null)
  return {
    answer: asked?.kind === 'ok' ? asked.value : null,
    slips: asked?.kind === 'refused' ? asked.problems : slips,
    busy: isFetching,
    ask: (draft: CopperDraft): void => {
      const read = measuredCopper(draft)
      setSlips(read.kind === 'refused' ? read.problems : [])
      setMeasured(read.kind === 'ok' ? read.value : null)
    },
    clear: (): void => {
      setSlips([])
      setMeasured(null)
    },
  }
}
