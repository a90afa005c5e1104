import { Button } from 'react-aria-components/Button'

type StepperProps = {
  /** What is counted, for those who do not see it. */
  readonly label: string
  readonly value: number
  readonly least: number
  readonly most: number
  readonly onChange: (value: number) => void
}

/** A small count with a key on each side. */
export const Stepper = ({ label, value, least, most, onChange }: StepperProps) => (
  <div role="group" aria-label={`How many: ${label}`} className="stepper">
    <Button className="key" aria-label="One fewer" isDisabled={value <= least} onPress={() => onChange(value - 1)}>
      −
    </Button>
    <output className="figure">{value}</output>
    <Button className="key" aria-label="One more" isDisabled={value >= most} onPress={() => onChange(value + 1)}>
      +
    </Button>
  </div>
)
