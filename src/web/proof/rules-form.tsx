import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { quantityFromText } from '../../base/units.ts'
import type { NoteContentInput } from '../../bench/note.ts'
import type { RegionChoice } from '../../machine/proof/proof-view.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { useNotes } from '../use-notes.ts'
import { capital } from '../words.ts'
import { useProofSheet } from './proof-sheet.ts'
import { SizeOptions } from './size-options.tsx'

const fields = ['region', 'profile', 'size', 'lengthM'] as const

/** The field that a problem belongs to: also one inside it, as the volts that a region has. */
const fieldOf = ({ where }: Problem): (typeof fields)[number] | undefined =>
  fields.find((field) => where.split(/[. ]/).includes(field))

/** Chooses region, edition and lead, and notes them. */
export const RulesForm = ({ onDone }: { readonly onDone: () => void }) => {
  const { proof } = useProofSheet()
  const { draft, set, choice, problems, busy, submit } = useRulesDraft(onDone)
  const at = (field: (typeof fields)[number]): readonly Problem[] => problems.filter((one) => fieldOf(one) === field)
  const hasFindings = proof.steps.some(({ findings }) => findings.some(({ note }) => note !== null))
  return (
    <form onSubmit={(event) => void submit(event)} aria-label="Rules and lead" noValidate>
      <Select label="Region" value={draft.region} onChange={set.region} problems={at('region')}>
        {proof.choices.map(({ region, name }) => (
          <option key={region} value={region}>
            {capital(name)}
          </option>
        ))}
      </Select>
      <Select label="Edition" value={draft.profile} onChange={set.profile} problems={at('profile')}>
        {choice?.profiles.map(({ id, name, edition }) => (
          <option key={id} value={id}>
            {name}, {edition}
          </option>
        ))}
      </Select>
      <div className="field-row">
        <Select label="Lead, each conductor" value={draft.size} onChange={set.size} problems={at('size')}>
          <option value="">not known</option>
          <SizeOptions />
        </Select>
        <Field
          label="Its length"
          value={draft.length}
          onChange={set.length}
          unit="m"
          inputMode="decimal"
          problems={at('lengthM')}
        />
      </div>
      {hasFindings ? (
        <p className="hint">What was found already is kept, and judged anew by what you choose here.</p>
      ) : null}
      <Problems problems={problems.filter((one) => fieldOf(one) === undefined)} />
      <Button type="submit" className="key enter" isDisabled={busy}>
        Prove it by these
      </Button>
    </form>
  )
}

type RulesDraft = { readonly region: string; readonly profile: string; readonly size: string; readonly length: string }

const useRulesDraft = (onDone: () => void) => {
  const { bench, document, proof, stale } = useProofSheet()
  const { write, busy, problems: refusals } = useNotes(bench, document.state.id)
  const [slips, setSlips] = useState<readonly Problem[] | null>(null)
  const [draft, setDraft] = useState<RulesDraft>(() => ({
    region: proof.rules.region,
    profile: proof.rules.profile,
    size: proof.lead?.size ?? '',
    length: proof.lead === null ? '' : String(proof.lead.lengthM),
  }))
  const change = (part: Partial<RulesDraft>): void => {
    setDraft((before) => ({ ...before, ...part }))
    setSlips([])
  }
  const choiceOf = (region: string): RegionChoice | undefined => proof.choices.find((one) => one.region === region)
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const choice = choiceOf(draft.region)
    if (busy || stale || choice === undefined) return
    const lead = leadFrom(draft.size, draft.length)
    if (lead.problems.length > 0) return setSlips(lead.problems)
    setSlips(null)
    const rules = { region: choice.region, profile: draft.profile }
    if (!(await write([{ kind: 'rules', rules, ...lead.noted }]))) return
    say('Noted. What was found is judged by these rules.')
    onDone()
  }
  const set = {
    region: (region: string) => change({ region, profile: choiceOf(region)?.profiles[0]?.id ?? '' }),
    profile: (profile: string) => change({ profile }),
    size: (size: string) => change({ size }),
    length: (length: string) => change({ length }),
  }
  return { draft, set, choice: choiceOf(draft.region), problems: slips ?? refusals, busy: busy || stale, submit }
}

type NotedLead = Pick<Extract<NoteContentInput, { kind: 'rules' }>, 'lead'>

/** The lead as written: nothing where neither size nor length is said. */
const leadFrom = (
  size: string,
  length: string,
): { readonly noted: NotedLead; readonly problems: readonly Problem[] } => {
  if (size === '') return { noted: {}, problems: [] }
  const lengthM = quantityFromText(length, 'lengthM', 'lead.lengthM')
  if (lengthM.kind === 'refused') return { noted: {}, problems: lengthM.problems }
  return { noted: { lead: { size, lengthM: lengthM.value } }, problems: [] }
}
