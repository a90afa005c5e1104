import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { roleNames, roles } from '../../facts/roles.ts'
import { passphraseLimits } from '../../facts/sign-in.ts'
import { Field } from '../parts/field.tsx'
import { Select } from '../parts/select.tsx'
import { addPerson, type TakeAnswer } from './api.ts'
import { SecretField } from './secret-field.tsx'

/** A name, what they may do, and a first passphrase, which they can set anew themselves. */
export const AddPerson = ({ take }: { readonly take: TakeAnswer }) => {
  const [name, setName] = useState('')
  const [role, setRole] = useState<string>('bench')
  const [passphrase, setPassphrase] = useState('')
  const add = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    if (!take(await addPerson({ name, role, passphrase }), `Added: ${name.trim()}.`)) return
    setName('')
    setRole('bench')
    setPassphrase('')
  }
  return (
    <form onSubmit={(event) => void add(event)} aria-label="Add somebody" noValidate>
      <Field label="Name" value={name} onChange={setName} />
      <Select label="What they may do" value={role} onChange={setRole}>
        {roles.map((one) => (
          <option key={one} value={one}>
            {roleNames[one]}
          </option>
        ))}
      </Select>
      <SecretField
        label={`Passphrase, at least ${passphraseLimits.leastCharacters} characters`}
        value={passphrase}
        onChange={setPassphrase}
        isNew
      />
      <Button className="key" type="submit" isDisabled={name.trim() === '' || passphrase === ''}>
        Add
      </Button>
    </form>
  )
}
