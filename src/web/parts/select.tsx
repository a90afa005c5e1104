import { useId, type ReactNode } from 'react'
import type { Problem } from '../../base/problem.ts'

type SelectProps = {
  readonly label: string
  readonly value: string
  readonly onChange: (value: string) => void
  readonly children: ReactNode
  readonly problems?: readonly Problem[]
}

/** The device's own list to choose from: the one that works best with a thumb. Its problems stand beneath. */
export const Select = ({ label, value, onChange, children, problems = [] }: SelectProps) => {
  const id = useId()
  const isInvalid = problems.length > 0
  return (
    <div className="field" data-invalid={isInvalid || undefined}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        onChange={(event) => onChange(event.target.value)}
        aria-invalid={isInvalid || undefined}
        aria-describedby={isInvalid ? `${id}-problem` : undefined}
      >
        {children}
      </select>
      {isInvalid ? (
        <span id={`${id}-problem`} className="problem">
          {problems.map((one) => `${one.what}. ${one.mend}.`).join(' ')}
        </span>
      ) : null}
    </div>
  )
}
