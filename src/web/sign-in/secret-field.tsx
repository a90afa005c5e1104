import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { Input } from 'react-aria-components/Input'
import { Label } from 'react-aria-components/Label'
import { TextField } from 'react-aria-components/TextField'

type SecretFieldProps = {
  readonly label: string
  readonly value: string
  readonly onChange: (value: string) => void
  /** One that is to be, which the browser does not fill in. */
  readonly isNew?: boolean
}

/** A field for a passphrase: hidden unless asked to be shown, open to pasting and to what the browser remembers. */
export const SecretField = ({ label, value, onChange, isNew = false }: SecretFieldProps) => {
  const [isShown, setShown] = useState(false)
  return (
    <TextField
      className="field"
      value={value}
      onChange={onChange}
      type={isShown ? 'text' : 'password'}
      autoComplete={isNew ? 'new-password' : 'current-password'}
    >
      <Label>{label}</Label>
      <span className="field-line">
        <Input autoCapitalize="none" spellCheck={false} />
        <Button className="plain" aria-pressed={isShown} onPress={() => setShown(!isShown)}>
          {isShown ? 'Hide' : 'Show'}
        </Button>
      </span>
    </TextField>
  )
}
