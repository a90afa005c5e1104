import { useId } from 'react'
import { ToggleButton } from 'react-aria-components/ToggleButton'

type OneOfProps<Id extends string> = {
  readonly label: string
  readonly options: readonly { readonly id: Id; readonly name: string }[]
  readonly chosen: Id
  readonly onChange: (chosen: Id) => void
  readonly hideLabel?: boolean
  readonly className?: string
}

/** Exactly one of a few: buttons of which one is down. */
export const OneOf = <Id extends string>({
  label,
  options,
  chosen,
  onChange,
  hideLabel = false,
  className = '',
}: OneOfProps<Id>) => {
  const id = useId()
  return (
    <div role="group" aria-labelledby={id} className={`one-of ${className}`}>
      <span id={id} className={hideLabel ? 'unseen' : 'label'}>
        {label}
      </span>
      <div className="one-of-row">
        {options.map((option) => (
          <ToggleButton
            key={option.id}
            className="key"
            isSelected={chosen === option.id}
            onChange={() => onChange(option.id)}
          >
            {option.name}
          </ToggleButton>
        ))}
      </div>
    </div>
  )
}
