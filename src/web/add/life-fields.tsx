import type { Problem } from '../../base/problem.ts'
import { wearLevels } from '../../facts/age-and-wear.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { problemsAt } from '../problems-at.ts'
import type { Draft } from './draft.ts'

type LifeProps = {
  readonly draft: Pick<Draft, 'age' | 'wear'>
  readonly change: (part: Partial<Draft>) => void
  readonly problems: readonly Problem[]
}

const uses = [{ id: '' as const, name: 'not known' }, ...wearLevels.map((id) => ({ id, name: id }))]

/** Age and use, where they are known: they shift a little what is likely to be wrong. */
export const LifeFields = ({ draft, change, problems }: LifeProps) => (
  <Fold title={draft.age === '' && draft.wear === '' ? 'Age and use: not known' : 'Age and use'}>
    <Field
      label="Age"
      unit="years"
      value={draft.age}
      onChange={(age) => change({ age })}
      inputMode="decimal"
      problems={problemsAt(problems, 'ageYears')}
    />
    <OneOf label="Use" options={uses} chosen={draft.wear} onChange={(wear) => change({ wear })} />
  </Fold>
)
