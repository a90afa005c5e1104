import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import { Input } from 'react-aria-components/Input'
import { Label } from 'react-aria-components/Label'
import { TextField } from 'react-aria-components/TextField'
import type { Problem } from '../../base/problem.ts'
import { say } from '../parts/live.tsx'
import { Loading } from '../parts/loading.tsx'
import { Problems } from '../parts/problems.tsx'
import { PageTitle } from '../router.tsx'
import { getHow, signIn, type HowToSignIn } from '../sign-in/api.ts'
import { markSignedIn } from '../sign-in/needed.ts'
import { whoKey } from '../sign-in/use-who.ts'
import { SecretField } from '../sign-in/secret-field.tsx'

/** Stands in place of every page until this device is signed in; then the page that was asked for comes. */
export const SignInPage = () => {
  const { data, error } = useQuery({ queryKey: ['sign-in'], queryFn: ({ signal }) => getHow(signal), staleTime: 0 })
  return (
    <div className="sheet">
      <PageTitle windowTitle="Sign in">Sign in to the bench</PageTitle>
      {data === undefined ? <Loading what="the door" error={error} /> : <SignInForm how={data} />}
    </div>
  )
}

const SignInForm = ({ how }: { readonly how: HowToSignIn }) => {
  const [name, setName] = useState('')
  const [passphrase, setPassphrase] = useState('')
  const { problems, busy, enter } = useSigningIn()
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    void enter(name.trim(), passphrase)
  }
  if (how.by === 'nothing')
    return <p>No passphrase is set on the bench. On its machine, run thrum passphrase, then load this page again.</p>
  return (
    <form onSubmit={submit} aria-label="Sign in" noValidate>
      {how.by === 'name' ? (
        <TextField className="field" value={name} onChange={setName} autoComplete="username">
          <Label>Your name</Label>
          <span className="field-line">
            <Input autoCapitalize="words" spellCheck={false} />
          </span>
        </TextField>
      ) : null}
      <SecretField
        label={how.by === 'name' ? 'Your passphrase' : 'Passphrase of the bench'}
        value={passphrase}
        onChange={setPassphrase}
      />
      <p className="hint">This device stays signed in until you sign it out, or it is not used for half a year.</p>
      <Problems problems={problems} />
      <Button type="submit" className="key enter" isDisabled={busy || passphrase === ''}>
        {busy ? 'Signing in …' : 'Sign in'}
      </Button>
    </form>
  )
}

const useSigningIn = () => {
  const client = useQueryClient()
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const enter = async (name: string, passphrase: string): Promise<void> => {
    setBusy(true)
    const answer = await signIn(name, passphrase)
    setBusy(false)
    if (answer.kind === 'refused') return setProblems(answer.problems)
    client.clear()
    client.setQueryData(whoKey, answer.value)
    markSignedIn()
    say('Signed in.')
  }
  return { problems, busy, enter }
}
