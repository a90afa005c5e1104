import type { Problem } from '../../base/problem.ts'
import type { Device, Person } from './person.ts'

type Kept = { readonly kind: 'kept' } | { readonly kind: 'not-kept'; readonly problem: Problem }

/** Where people and their devices are kept. */
export type PeopleStore = {
  /** All who ever had a name, those who left too, and the bench itself where it has a passphrase; in the order they were added. */
  readonly people: () => Promise<readonly Person[]>
  /** Adds a person, or puts them in the place of the one with the same id. */
  readonly putPerson: (person: Person) => Promise<Kept>
  /** The devices that are signed in, the one seen last first. */
  readonly devices: () => Promise<readonly Device[]>
  /** The device that holds this token: the present one, the next one or the last one. */
  readonly deviceWith: (token: string) => Promise<Device | null>
  readonly addDevice: (device: Device) => Promise<Kept>
  /** Puts a device in the place of the one it was made from, whose version was one less. False when another change came first, or it is gone. */
  readonly changeDevice: (device: Device) => Promise<boolean>
  readonly removeDevice: (id: string) => Promise<Kept>
  /** Forgets every device of a person. */
  readonly removeDevicesOf: (person: string) => Promise<Kept>
}

/** How passphrases are hashed, and tokens made and hashed; the first takes memory and time on purpose. */
export type Secrets = {
  readonly hash: (passphrase: string) => Promise<string>
  /** Whether a passphrase is the one that was kept. With null it takes the same time and is never so. */
  readonly matches: (passphrase: string, kept: string | null) => Promise<boolean>
  /** A token nobody can guess: 256 bits. */
  readonly newToken: () => string
  readonly tokenHash: (token: string) => string
}
