import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Problem } from '../../base/problem.ts'
import { roleNames, roles } from '../../facts/roles.ts'
import { Fold } from '../parts/fold.tsx'
import { say } from '../parts/live.tsx'
import { Loading } from '../parts/loading.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { AddPerson } from './add-person.tsx'
import { changeRole, getPeople, removePerson, setPassphraseOf, type PersonShown, type TakeAnswer } from './api.ts'
import { FirstPerson } from './first-person.tsx'
import { devicesKey } from './devices.tsx'
import { SecretField } from './secret-field.tsx'
import { whoKey } from './use-who.ts'

const peopleKey: readonly string[] = ['people']

/** Who has a name at the bench; each can be changed and taken off, and others added. */
export const People = () => {
  const { data, error } = useQuery({ queryKey: peopleKey, queryFn: ({ signal }) => getPeople(signal) })
  const there = data?.filter(({ goneAt }) => goneAt === null)
  const { problems, take } = usePeopleAnswers()
  return (
    <section aria-label="People">
      <h2 className="settings-head">People</h2>
      {there === undefined ? <Loading what="the people" error={error} /> : null}
      <Problems problems={problems} />
      {there?.map((person) => (
        <Fold key={person.id} title={`${person.name}, ${roleNames[person.role]}`}>
          <ChangePerson person={person} isOnlyOne={there.length === 1} take={take} />
        </Fold>
      ))}
      {there === undefined ? null : there.length === 0 ? (
        <>
          <p className="hint">
            Nobody has a name here: the bench is one for all. Where several work at it, names say who wrote what, and
            keep the books to those who keep them.
          </p>
          <Fold title="Begin with your name">
            <FirstPerson />
          </Fold>
        </>
      ) : (
        <Fold title="Add somebody">
          <AddPerson take={take} />
        </Fold>
      )}
    </section>
  )
}

const usePeopleAnswers = () => {
  const client = useQueryClient()
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const take: TakeAnswer = (answer, done) => {
    setProblems(answer.kind === 'refused' ? answer.problems : [])
    if (answer.kind === 'refused') return false
    client.setQueryData(peopleKey, answer.value.people)
    void client.invalidateQueries({ queryKey: devicesKey })
    void client.invalidateQueries({ queryKey: whoKey })
    say(done)
    return true
  }
  return { problems, take }
}

type ChangeProps = { readonly person: PersonShown; readonly isOnlyOne: boolean; readonly take: TakeAnswer }

const ChangePerson = ({ person, isOnlyOne, take }: ChangeProps) => {
  const { id, name, role } = person
  const [passphrase, setPassphrase] = useState('')
  const [isAsked, setAsked] = useState(false)
  const setIt = async (): Promise<void> => {
    if (take(await setPassphraseOf(id, passphrase), `Passphrase of ${name} set.`)) setPassphrase('')
  }
  return (
    <>
      <Select
        label={`What ${name} may do`}
        value={role}
        onChange={(to) => void changeRole(id, to).then((answer) => take(answer, `Role of ${name} changed.`))}
      >
        {roles.map((one) => (
          <option key={one} value={one}>
            {roleNames[one]}
          </option>
        ))}
      </Select>
      <SecretField label={`New passphrase of ${name}`} value={passphrase} onChange={setPassphrase} isNew />
      <div className="person-keys">
        <Button className="key" isDisabled={passphrase === ''} onPress={() => void setIt()}>
          Set passphrase
        </Button>
        {isAsked ? (
          <Button
            className="key"
            onPress={() => void removePerson(id).then((answer) => take(answer, `Taken off: ${name}.`))}
          >
            Take {name} off; {isOnlyOne ? 'nobody has a name then' : 'their devices are shut out'}
          </Button>
        ) : (
          <Button className="key" onPress={() => setAsked(true)}>
            Take {name} off
          </Button>
        )}
      </div>
    </>
  )
}
