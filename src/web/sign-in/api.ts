import type { Role } from '../../facts/roles.ts'
import { getFrom, postTo, type Answer } from '../api.ts'

type Named = { readonly id: string; readonly name: string }

/** What the bench asks for to let this device in. */
export type HowToSignIn = { readonly needed: boolean; readonly by: 'name' | 'passphrase' | 'nothing' }
/** Who is signed in; `person`: null where nobody has a name. */
export type Who = {
  readonly needed: boolean
  readonly person: Named | null
  readonly role: Role
  readonly people: readonly Named[]
}
export type SignedInDevice = {
  readonly id: string
  readonly name: string
  readonly person: Named | null
  readonly seenAt: string
  readonly isThis: boolean
}
type Devices = { readonly devices: readonly SignedInDevice[] }
export type PersonShown = Named & { readonly role: Role; readonly goneAt: string | null }

export const getHow = (signal: AbortSignal): Promise<HowToSignIn> => getFrom('/sign-in', signal)
export const getWho = (signal: AbortSignal): Promise<Who> => getFrom('/who', signal)
export const signIn = (name: string, passphrase: string): Promise<Answer<Who>> =>
  postTo('/sign-in', { name, passphrase })
export const signOut = (): Promise<Answer<object>> => postTo('/sign-out', {})

export const getDevices = async (signal: AbortSignal): Promise<readonly SignedInDevice[]> =>
  (await getFrom<Devices>('/devices', signal)).devices
export const shutOut = (id: string): Promise<Answer<Devices>> =>
  postTo(`/devices/${encodeURIComponent(id)}/shut-out`, {})
export type PeopleAnswer = Answer<{ readonly people: readonly PersonShown[] }>

/** Shows what became of a change; true where it was made. */
export type TakeAnswer = (answer: PeopleAnswer, done: string) => boolean

const atPerson = (id: string, what: string): string => `/people/${encodeURIComponent(id)}/${what}`

export const addPerson = (person: {
  readonly name: string
  readonly role: string
  readonly passphrase: string
}): Promise<PeopleAnswer> => postTo('/people', person)
export const changeRole = (id: string, role: string): Promise<PeopleAnswer> => postTo(atPerson(id, 'role'), { role })
export const removePerson = (id: string): Promise<PeopleAnswer> => postTo(atPerson(id, 'remove'), {})
export const setPassphraseOf = (id: string, passphrase: string): Promise<PeopleAnswer> =>
  postTo(atPerson(id, 'passphrase'), { passphrase })
export const setOwnPassphrase = (old: string, passphrase: string): Promise<Answer<object>> =>
  postTo('/who/passphrase', { old, passphrase })

export const getPeople = async (signal: AbortSignal): Promise<readonly PersonShown[]> =>
  (await getFrom<{ readonly people: readonly PersonShown[] }>('/people', signal)).people
