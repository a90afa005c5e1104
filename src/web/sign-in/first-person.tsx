import { useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { roleNames } from '../../facts/roles.ts'
import { passphraseLimits } from '../../facts/sign-in.ts'
import { forgetAnswers } from '../offline/forget.ts'
import { Field } from '../parts/field.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { problemsAt, problemsElsewhere } from '../problems-at.ts'
import { addPerson, signIn } from './api.ts'
import { emptyFirstPerson, firstPersonProblems, type FirstPersonDraft } from './first-person-draft.ts'
import { markSignedIn, markSignInNeeded } from './needed.ts'
import { SecretField } from './secret-field.tsx'
import { whoKey } from './use-who.ts'

/** The first who has a name is whoever adds them: they keep the books, and are signed in at once, so that nobody is locked out. */
export const FirstPerson = () => {
  const [draft, setDraft] = useState<FirstPersonDraft>(emptyFirstPerson)
  const { problems, busy, begin } = useBeginning()
  const change = (part: Partial<FirstPersonDraft>): void => setDraft({ ...draft, ...part })
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    void begin(draft)
  }
  return (
    <form onSubmit={submit} aria-label="Begin with your name" noValidate>
      <p>
        You are the first, {roleNames.keeper}, and can add others afterwards. From then on everybody signs in by name
        and passphrase, on this machine too, and every note says who made it. A passphrase of the bench counts no more,
        and devices that signed in by it have to sign in anew.
      </p>
      <Field
        label="Your name"
        value={draft.name}
        onChange={(name) => change({ name })}
        problems={problemsAt(problems, 'name')}
      />
      <SecretField
        label={`Your passphrase, at least ${passphraseLimits.leastCharacters} characters`}
        value={draft.passphrase}
        onChange={(passphrase) => change({ passphrase })}
        isNew
      />
      <SecretField
        label="Your passphrase once more"
        value={draft.again}
        onChange={(again) => change({ again })}
        isNew
      />
      <p className="hint">
        Forgotten, it is set anew on the machine the bench is kept on:{' '}
        <code className="command">thrum passphrase --person NAME</code>.
      </p>
      <Problems problems={problemsElsewhere(problems, ['name'])} />
      <Button className="key" type="submit" isDisabled={busy || draft.passphrase === ''}>
        {busy ? 'Adding …' : 'Begin with names'}
      </Button>
    </form>
  )
}

const useBeginning = () => {
  const client = useQueryClient()
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const begin = async (draft: FirstPersonDraft): Promise<void> => {
    const wrong = firstPersonProblems(draft)
    setProblems(wrong)
    if (wrong.length > 0) return
    const [name, { passphrase }] = [draft.name.trim(), draft]
    setBusy(true)
    const added = await addPerson({ name, role: 'keeper', passphrase })
    setBusy(false)
    if (added.kind === 'refused') return setProblems(added.problems)
    const entered = await signIn(name, passphrase)
    // What was kept was kept for nobody in particular.
    await forgetAnswers()
    if (entered.kind === 'refused') {
      client.clear()
      return markSignInNeeded()
    }
    client.setQueryData(whoKey, entered.value)
    markSignedIn()
    void client.invalidateQueries()
    say(`Signed in: ${name}.`)
  }
  return { problems, busy, begin }
}
