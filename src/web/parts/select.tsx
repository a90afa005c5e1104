import { useId, type ReactNode } from 'react'

type SelectProps = {
  readonly label: string
  readonly value: string
  readonly onChange: (value: string) => void
  readonly children: ReactNode
}

/** The device's own list to choose from: the one that works best with a thumb. */
export const Select = ({ label, value, onChange, children }: SelectProps) => {
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value)}>
        {children}
      </select>
    </div>
  )
}
