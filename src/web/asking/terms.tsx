import { useState } from 'react'
import { moneyFromText } from '../../base/money.ts'
import { problem } from '../../base/problem.ts'
import { gradeFacts, grades, type Grade } from '../../facts/asking.ts'
import type { AskingChoices } from '../../machine/asking-choices.ts'
import type { AskingView } from '../../machine/asking.ts'
import { Field } from '../parts/field.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Select } from '../parts/select.tsx'

type TermsProps = { readonly asking: AskingView; readonly onChange: (change: Partial<AskingChoices>) => void }

const gradeOptions = grades.map((id) => ({ id, name: id }))
const horizons = [7, 14, 30, 60, 90] as const

/** Its looks, how long to wait, and what waiting costs. */
export const Terms = ({ asking: { choices, currency }, onChange }: TermsProps) => {
  const [day, setDay] = useState((choices.dayMinor / 100).toFixed(2))
  const dayMinor = moneyFromText(day)
  const change = (text: string): void => {
    setDay(text)
    const minor = moneyFromText(text)
    if (minor !== null) onChange({ dayMinor: minor })
  }
  const slips =
    dayMinor === null
      ? [problem('not-money', 'dayMinor', `“${day}” is not an amount of money`, 'Write it like 0.20')]
      : []
  return (
    <section className="panel" aria-label="This machine">
      <h2>This machine</h2>
      <OneOf
        label="Looks"
        options={gradeOptions}
        chosen={choices.grade}
        onChange={(grade: Grade) => onChange({ grade })}
      />
      <p className="hint">
        {choices.grade}: {gradeFacts[choices.grade].name}
      </p>
      <div className="field-row">
        <Select
          label="Give up after"
          value={String(choices.horizonDays)}
          onChange={(days) => onChange({ horizonDays: Number(days) })}
        >
          {horizons.map((days) => (
            <option key={days} value={days}>
              {days} days
            </option>
          ))}
        </Select>
        <Field
          label="A day of standing costs"
          value={day}
          onChange={change}
          unit={currency}
          inputMode="decimal"
          problems={slips}
        />
      </div>
    </section>
  )
}
