import { useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { forgetAnswers } from '../offline/forget.ts'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { setOwnPassphrase } from './api.ts'
import { markSignInNeeded } from './needed.ts'
import { SecretField } from './secret-field.tsx'

/** Sets the passphrase one signs in by; then this device signs in anew, like all others of the same person. */
export const OwnPassphrase = () => (
  <Fold title="Set another passphrase">
    <OwnPassphraseForm />
  </Fold>
)

const OwnPassphraseForm = () => {
  const client = useQueryClient()
  const [old, setOld] = useState('')
  const [passphrase, setPassphrase] = useState('')
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const set = async (event: FormEvent): Promise<void> => {
    event.preventDefault()
    const answer = await setOwnPassphrase(old, passphrase)
    if (answer.kind === 'refused') return setProblems(answer.problems)
    await forgetAnswers()
    client.clear()
    markSignInNeeded()
    say('Passphrase set. Sign in with it.')
  }
  return (
    <form onSubmit={(event) => void set(event)} aria-label="Set another passphrase" noValidate>
      <SecretField label="Passphrase until now" value={old} onChange={setOld} />
      <SecretField label="New passphrase" value={passphrase} onChange={setPassphrase} isNew />
      <p className="hint">All devices that signed in by the old one have to sign in anew, this one too.</p>
      <Problems problems={problems} />
      <Button className="key" type="submit" isDisabled={old === '' || passphrase === ''}>
        Set passphrase
      </Button>
    </form>
  )
}
