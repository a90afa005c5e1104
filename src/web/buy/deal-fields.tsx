import type { Currency } from '../../base/money.ts'
import type { Problem } from '../../base/problem.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { conditionIds, conditionShares, type Condition } from '../../facts/buying.ts'
import { wearLevels } from '../../facts/age-and-wear.ts'
import { Chips } from '../parts/chips.tsx'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Select } from '../parts/select.tsx'
import { problemsAt } from '../problems-at.ts'
import { capital } from '../words.ts'
import type { BuyDraft } from './draft.ts'

type DealProps = {
  readonly draft: BuyDraft
  readonly change: (part: Partial<BuyDraft>) => void
  readonly problems: readonly Problem[]
  readonly currency: Currency
  readonly blueprint: Blueprint | undefined
}

const uses = [{ id: '' as const, name: 'not known' }, ...wearLevels.map((id) => ({ id, name: id }))]

/** Price, way, age, looks and what is missing: two to a line, so that they fit above the thumb. */
export const DealFields = ({ draft, change, problems, currency, blueprint }: DealProps) => (
  <>
    <div className="field-row">
      <Field
        label="Asks"
        unit={currency}
        value={draft.asking}
        onChange={(asking) => change({ asking })}
        inputMode="decimal"
        problems={problemsAt(problems, 'askingMinor')}
      />
      <Field
        label="How far, one way"
        unit="km"
        value={draft.distance}
        onChange={(distance) => change({ distance })}
        inputMode="decimal"
        problems={problemsAt(problems, 'distanceKm')}
      />
    </div>
    <div className="field-row">
      <Field
        label="Age, if known"
        unit="years"
        value={draft.age}
        onChange={(age) => change({ age })}
        inputMode="decimal"
        problems={problemsAt(problems, 'ageYears')}
      />
      <Select
        label="Looks"
        value={draft.condition}
        onChange={(condition) => change({ condition: condition as Condition })}
      >
        {conditionIds.map((id) => (
          <option key={id} value={id}>
            {capital(conditionShares[id].name)}
          </option>
        ))}
      </Select>
    </div>
    {blueprint === undefined ? null : (
      <Fold title={moreTitle(draft, blueprint)}>
        <Chips
          label="Not there"
          options={blueprint.parts}
          chosen={draft.missing}
          onChange={(missing) => change({ missing })}
        />
        <OneOf label="Use" options={uses} chosen={draft.wear} onChange={(wear) => change({ wear })} />
      </Fold>
    )}
  </>
)

const moreTitle = ({ missing, wear }: BuyDraft, { parts }: Blueprint): string => {
  const names = parts.filter(({ id }) => missing.includes(id)).map(({ name }) => name.toLowerCase())
  const use = wear === '' ? '' : `; ${wear} use`
  return `Missing: ${names.length === 0 ? 'nothing' : names.join(', ')}${use}`
}
