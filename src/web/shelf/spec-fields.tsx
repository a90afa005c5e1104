import type { Problem } from '../../base/problem.ts'
import type { PartSpec } from '../../bench/shelf/part-note.ts'
import { partKinds, type PartKind, type SpecField } from '../../facts/part-kinds.ts'
import { Field } from '../parts/field.tsx'
import { problemsAt } from '../problems-at.ts'

/** Measures as typed, by field. */
export type SpecDraft = Readonly<Record<string, string>>

type SpecFieldsProps = {
  readonly partKind: PartKind
  readonly draft: SpecDraft
  readonly onChange: (draft: SpecDraft) => void
  readonly problems?: readonly Problem[]
}

export const fieldsOf = (partKind: PartKind): readonly SpecField[] => partKinds[partKind].fields

/** Whether a field is a number: it has a unit, or counts something. */
export const isMeasure = ({ id, unit }: SpecField): boolean => unit !== '' || id === 'cores' || id === 'poles'

/** The measures of a kind of part, each with its unit; what is not known is left empty. */
export const SpecFields = ({ partKind, draft, onChange, problems = [] }: SpecFieldsProps) => (
  <div className="field-row">
    {fieldsOf(partKind).map((field) => (
      <Field
        key={field.id}
        label={field.name}
        value={draft[field.id] ?? ''}
        onChange={(value) => onChange({ ...draft, [field.id]: value })}
        unit={field.unit === '' ? undefined : field.unit}
        inputMode={isMeasure(field) ? 'decimal' : 'text'}
        problems={problemsAt(problems, field.id)}
      />
    ))}
  </div>
)

/** The measures that were typed; a number where one is wanted and it reads as one, else the words, which the bench then refuses. */
export const specOfDraft = (partKind: PartKind, draft: SpecDraft): PartSpec =>
  Object.fromEntries(
    fieldsOf(partKind).flatMap((field) => {
      const text = (draft[field.id] ?? '').trim()
      if (text === '') return []
      const number = Number(text.replace(',', '.'))
      return [[field.id, isMeasure(field) && Number.isFinite(number) ? number : text]]
    }),
  )

export const draftOfSpec = (spec: PartSpec): SpecDraft =>
  Object.fromEntries(Object.entries(spec).map(([id, value]) => [id, String(value)]))
