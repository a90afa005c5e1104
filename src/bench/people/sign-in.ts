import type { Problem } from '../../base/problem.ts'
import type { Role } from '../../facts/roles.ts'
import { deviceTimes } from '../../facts/sign-in.ts'
import { named, type PeopleDeps } from './people-commands.ts'
import { benchItself, standing, type Device, type Person } from './person.ts'

/** Whose request it is. `person`: null for the bench itself, where nobody has a name. */
export type SignedIn = {
  readonly device: string
  readonly person: { readonly id: string; readonly name: string } | null
  readonly role: Role
}

/** Whether people sign in by name, by the one passphrase of the bench, or cannot, since none is set. */
export const signInBy = (people: readonly Person[]): 'name' | 'passphrase' | 'nothing' => {
  if (standing(people).length > 0) return 'name'
  return people.some(({ id, passphrase }) => id === benchItself && passphrase !== null) ? 'passphrase' : 'nothing'
}

export type SignInOutcome =
  | { readonly kind: 'signed-in'; readonly token: string; readonly signedIn: SignedIn }
  /** Which of name and passphrase was wrong is not said. */
  | { readonly kind: 'wrong' }
  | { readonly kind: 'not-kept'; readonly problem: Problem }

/** Signs a device in. It takes the same time whether the name is known or not. */
export const signIn = async (
  deps: PeopleDeps,
  asked: { readonly name: string; readonly passphrase: string; readonly device: string },
): Promise<SignInOutcome> => {
  const all = await deps.people.people()
  const by = signInBy(all)
  const person = by === 'name' ? named(standing(all), asked.name) : all.find(({ id }) => id === benchItself)
  const isRight = await deps.secrets.matches(asked.passphrase, person?.passphrase ?? null)
  if (person === undefined || !isRight) return { kind: 'wrong' }
  const token = deps.secrets.newToken()
  const device = newDevice(deps, person.id, asked.device, deps.secrets.tokenHash(token))
  const kept = await deps.people.addDevice(device)
  if (kept.kind === 'not-kept') return kept
  return { kind: 'signed-in', token, signedIn: signedInAs(device, person) }
}

const newDevice = (deps: PeopleDeps, person: string, name: string, token: string): Device => {
  const now = deps.now()
  return {
    id: deps.newId(),
    person,
    name,
    token,
    next: null,
    nextAt: null,
    last: null,
    lastUntil: null,
    tokenAt: now,
    signedInAt: now,
    seenAt: now,
    expiresAt: later(now, deviceTimes.lastsDays * day),
    version: 1,
  }
}

const signedInAs = (device: Device, person: Person): SignedIn => ({
  device: device.id,
  person: person.id === benchItself ? null : { id: person.id, name: person.name },
  role: person.role,
})

/** Who asks, and the token to hold from now on where it changes. */
export type Recognised = { readonly signedIn: SignedIn; readonly newToken: string | null }

/**
 * Who holds this token; null when nobody does any more. A token that is a day old is changed for another: the new one counts from when
 * it is first shown, so one that was lost on the way does no harm, and the old one for a minute more, for answers still under way.
 */
export const recognise = async (deps: PeopleDeps, token: string): Promise<Recognised | null> => {
  const hash = deps.secrets.tokenHash(token)
  const device = await deps.people.deviceWith(hash)
  const now = deps.now()
  if (device === null || device.expiresAt <= now) return null
  if (device.last === hash && (device.lastUntil ?? '') <= now) return null
  const people = await deps.people.people()
  const person = people.find(({ id, goneAt }) => id === device.person && goneAt === null)
  if (person === undefined || (person.id === benchItself && signInBy(people) === 'name')) return null
  return { signedIn: signedInAs(device, person), newToken: await carriedOn(deps, device, hash) }
}

/** Writes down what the visit changes about the device. Of two visits at once one does, and the other leaves it. */
const carriedOn = async (deps: PeopleDeps, device: Device, hash: string): Promise<string | null> => {
  const now = deps.now()
  if (device.next === hash) {
    await deps.people.changeDevice({
      ...seen(device, now),
      token: hash,
      tokenAt: now,
      next: null,
      nextAt: null,
      last: device.token,
      lastUntil: later(now, deviceTimes.graceSeconds * second),
    })
    return null
  }
  const isOld = device.token === hash && device.tokenAt <= later(now, -deviceTimes.changesAfterHours * hour)
  const wasHandedOut = device.nextAt !== null && device.nextAt > later(now, -deviceTimes.graceSeconds * second)
  if (isOld && !wasHandedOut) {
    const token = deps.secrets.newToken()
    const next = { ...seen(device, now), next: deps.secrets.tokenHash(token), nextAt: now }
    return (await deps.people.changeDevice(next)) ? token : null
  }
  if (device.seenAt <= later(now, -deviceTimes.seenEveryMinutes * minute))
    await deps.people.changeDevice(seen(device, now))
  return null
}

const seen = (device: Device, now: string): Device => ({
  ...device,
  seenAt: now,
  expiresAt: later(now, deviceTimes.lastsDays * day),
  version: device.version + 1,
})

const second = 1000
const minute = 60 * second
const hour = 60 * minute
const day = 24 * hour

const later = (at: string, ms: number): string => new Date(Date.parse(at) + ms).toISOString()
