import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { roleNames } from '../../facts/roles.ts'
import { useWaitingNotes } from '../outbox/outbox.ts'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { forgetAnswers } from '../offline/forget.ts'
import { signOut, type Who } from './api.ts'
import { markSignInNeeded } from './needed.ts'

/** Who is signed in on this device, and the way out. Notes that are not sent yet stay on the device, and that is said first. */
export const SignOut = ({ who }: { readonly who: Who }) => {
  const [isAsked, setAsked] = useState(false)
  const waiting = useWaitingNotes().length
  const { problems, busy, leave } = useSigningOut()
  return (
    <section aria-label="Signed in">
      <h2 className="settings-head">Signed in</h2>
      <p>{who.person === null ? 'With the passphrase of the bench.' : `${who.person.name}, ${roleNames[who.role]}.`}</p>
      {waiting > 0 ? (
        <p className="hint" role="note">
          {waiting === 1 ? 'One note is' : `${waiting} notes are`} not sent yet. Signed out,{' '}
          {waiting === 1 ? 'it stays' : 'they stay'} on this device and {waiting === 1 ? 'goes' : 'go'} in under the
          name of whoever signs in next.
        </p>
      ) : null}
      <Problems problems={problems} />
      {waiting > 0 && !isAsked ? (
        <Button className="key" onPress={() => setAsked(true)}>
          Sign out
        </Button>
      ) : (
        <Button className="key" isDisabled={busy} onPress={() => void leave()}>
          {waiting > 0 ? 'Sign out all the same' : 'Sign out'}
        </Button>
      )}
    </section>
  )
}

const useSigningOut = () => {
  const client = useQueryClient()
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const leave = async (): Promise<void> => {
    setBusy(true)
    const answer = await signOut()
    setBusy(false)
    if (answer.kind === 'refused') return setProblems(answer.problems)
    await forgetAnswers()
    client.clear()
    markSignInNeeded()
    say('Signed out.')
  }
  return { problems, busy, leave }
}
