import type { HTMLAttributes } from 'react'
import { FieldError } from 'react-aria-components/FieldError'
import { Input } from 'react-aria-components/Input'
import { Label } from 'react-aria-components/Label'
import { Text } from 'react-aria-components/Text'
import { TextArea } from 'react-aria-components/TextArea'
import { TextField } from 'react-aria-components/TextField'
import type { Problem } from '../../base/problem.ts'

type FieldProps = {
  readonly label: string
  readonly value: string
  readonly onChange: (value: string) => void
  readonly problems?: readonly Problem[]
  readonly unit?: string
  readonly hint?: string
  readonly long?: boolean
  readonly inputMode?: HTMLAttributes<HTMLInputElement>['inputMode']
  readonly className?: string
}

/** A field with its label above, its unit beside and its problems beneath. */
export const Field = ({
  label,
  value,
  onChange,
  problems = [],
  unit,
  hint,
  long = false,
  inputMode,
  className = '',
}: FieldProps) => (
  <TextField
    className={`field ${className}`}
    value={value}
    onChange={onChange}
    isInvalid={problems.length > 0}
    validationBehavior="aria"
    autoComplete="off"
  >
    <Label>{label}</Label>
    {long ? (
      <TextArea rows={2} />
    ) : (
      <span className="field-line">
        <Input inputMode={inputMode} />
        {unit === undefined ? null : <span className="field-unit">{unit}</span>}
      </span>
    )}
    {hint === undefined ? null : (
      <Text slot="description" className="hint">
        {hint}
      </Text>
    )}
    <FieldError className="problem">{problems.map((one) => `${one.what}. ${one.mend}.`).join(' ')}</FieldError>
  </TextField>
)
