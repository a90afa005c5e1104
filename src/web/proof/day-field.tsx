import { useId } from 'react'
import type { Problem } from '../../base/problem.ts'

type DayFieldProps = {
  readonly label: string
  readonly value: string
  readonly onChange: (day: string) => void
  readonly hint: string
  readonly problems: readonly Problem[]
}

/** A day, as 2026-03-14, by the device's own calendar; empty where it is not known. */
export const DayField = ({ label, value, onChange, hint, problems }: DayFieldProps) => {
  const id = useId()
  const isInvalid = problems.length > 0
  return (
    <div className="field" data-invalid={isInvalid || undefined}>
      <label htmlFor={id}>{label}</label>
      <span className="field-line">
        <input
          id={id}
          type="date"
          value={value}
          onChange={(event) => onChange(event.target.value)}
          aria-invalid={isInvalid || undefined}
          aria-describedby={isInvalid ? `${id}-hint ${id}-problem` : `${id}-hint`}
        />
      </span>
      <span id={`${id}-hint`} className="hint">
        {hint}
      </span>
      {isInvalid ? (
        <span id={`${id}-problem`} className="problem">
          {problems.map((one) => `${one.what}. ${one.mend}.`).join(' ')}
        </span>
      ) : null}
    </div>
  )
}
