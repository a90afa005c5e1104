import { useId } from 'react'
import { ToggleButton } from 'react-aria-components/ToggleButton'

type ChipsProps<Id extends string> = {
  readonly label: string
  readonly options: readonly { readonly id: Id; readonly name: string }[]
  readonly chosen: readonly Id[]
  readonly onChange: (chosen: readonly Id[]) => void
}

/** Several of these can hold at once; each is a button that stays down. */
export const Chips = <Id extends string>({ label, options, chosen, onChange }: ChipsProps<Id>) => {
  const id = useId()
  const toggle = (option: Id, on: boolean): void =>
    onChange(on ? [...chosen, option] : chosen.filter((one) => one !== option))
  return (
    <div role="group" aria-labelledby={id} className="chips">
      <span id={id} className="label">
        {label}
      </span>
      <div className="chips-row">
        {options.map((option) => (
          <ToggleButton
            key={option.id}
            className="chip"
            isSelected={chosen.includes(option.id)}
            onChange={(on) => toggle(option.id, on)}
          >
            {option.name}
          </ToggleButton>
        ))}
      </div>
    </div>
  )
}
