import type { Currency } from '../../base/money.ts'
import type { Problem } from '../../base/problem.ts'
import { Field } from '../parts/field.tsx'
import { Fold } from '../parts/fold.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { problemsAt } from '../problems-at.ts'
import type { BuyDraft } from './draft.ts'

type WantedProps = {
  readonly draft: BuyDraft
  readonly change: (part: Partial<BuyDraft>) => void
  readonly problems: readonly Problem[]
  readonly currency: Currency
}

const kinds = [
  { id: 'profit' as const, name: 'a profit above own hours' },
  { id: 'an-hour' as const, name: 'so much an hour' },
]

/** What the deal is to bring: left empty, just to lose nothing with own hours paid. */
export const WantedFields = ({ draft, change, problems, currency }: WantedProps) => (
  <Fold title={titleOf(draft, currency)}>
    <OneOf label="I want" options={kinds} chosen={draft.wanted} onChange={(wanted) => change({ wanted })} />
    <Field
      label={draft.wanted === 'profit' ? 'Profit wanted' : 'An hour is to bring'}
      unit={currency}
      value={draft.wantedMoney}
      onChange={(wantedMoney) => change({ wantedMoney })}
      inputMode="decimal"
      problems={[...problemsAt(problems, 'wanted'), ...problemsAt(problems, 'minor')]}
    />
  </Fold>
)

const titleOf = ({ wanted, wantedMoney }: BuyDraft, currency: Currency): string => {
  const money = wantedMoney.trim()
  if (money === '') return 'Wanted: to lose nothing, own hours paid'
  return wanted === 'profit' ? `Wanted: ${money} ${currency} profit` : `Wanted: ${money} ${currency} an hour`
}
