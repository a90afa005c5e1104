import { problem, type Problem } from '../../base/problem.ts'
import type { Role } from '../../facts/roles.ts'
import type { Clock, Ids } from '../ports.ts'
import { passphraseProblems } from './passphrase-rules.ts'
import type { PeopleStore, Secrets } from './people-ports.ts'
import { benchItself, personSchema, standing, type Person } from './person.ts'

export type PeopleDeps = {
  readonly people: PeopleStore
  readonly secrets: Secrets
  readonly now: Clock
  readonly newId: Ids
}

export type PeopleOutcome =
  | { readonly kind: 'done'; readonly person: Person }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'not-kept'; readonly problems: readonly Problem[] }

/**
 * Gives a person a name, a role and a passphrase. The first one keeps the books, or nobody could; from then on the one passphrase of
 * the bench counts no more, and devices signed in by it are forgotten.
 */
export const addPerson = async (
  deps: PeopleDeps,
  { name, role, passphrase }: { readonly name: string; readonly role: Role; readonly passphrase: string },
): Promise<PeopleOutcome> => {
  const there = standing(await deps.people.people())
  const problems = [...nameProblems(there, name), ...passphraseProblems(passphrase)]
  if (there.length === 0 && role !== 'keeper') problems.push(firstKeeps)
  if (problems.length > 0) return { kind: 'refused', problems }
  const person: Person = {
    id: deps.newId(),
    name: name.trim(),
    role,
    passphrase: await deps.secrets.hash(passphrase),
    addedAt: deps.now(),
    goneAt: null,
  }
  const outcome = await put(deps, person)
  if (outcome.kind === 'done' && there.length === 0) await deps.people.removeDevicesOf(benchItself)
  return outcome
}

/** Changes what a person may do. Somebody always keeps the books. */
export const changeRole = async (deps: PeopleDeps, name: string, role: Role): Promise<PeopleOutcome> => {
  const there = standing(await deps.people.people())
  const person = named(there, name)
  if (person === undefined) return { kind: 'refused', problems: [nobody(name, there)] }
  if (role !== 'keeper' && !anotherKeeps(there, person)) return { kind: 'refused', problems: [lastKeeper] }
  return put(deps, { ...person, role })
}

/** Takes a person off: their devices are shut out, what they wrote keeps their name. The last one may go whatever their role. */
export const removePerson = async (deps: PeopleDeps, name: string): Promise<PeopleOutcome> => {
  const there = standing(await deps.people.people())
  const person = named(there, name)
  if (person === undefined) return { kind: 'refused', problems: [nobody(name, there)] }
  if (there.length > 1 && !anotherKeeps(there, person)) return { kind: 'refused', problems: [lastKeeper] }
  const outcome = await put(deps, { ...person, passphrase: null, goneAt: deps.now() })
  if (outcome.kind === 'done') await deps.people.removeDevicesOf(person.id)
  return outcome
}

/** Sets the passphrase of a person, or of the bench itself where nobody has a name. Devices signed in by the old one are shut out. */
export const setPassphrase = async (
  deps: PeopleDeps,
  name: string | null,
  passphrase: string,
): Promise<PeopleOutcome> => {
  const all = await deps.people.people()
  const there = standing(all)
  const problems = passphraseProblems(passphrase)
  if (name === null && there.length > 0) problems.push(whosePassphrase(there))
  const person = name === null ? (all.find(({ id }) => id === benchItself) ?? bench(deps)) : named(there, name)
  if (person === undefined) problems.push(nobody(name ?? '', there))
  if (problems.length > 0 || person === undefined) return { kind: 'refused', problems }
  const outcome = await put(deps, { ...person, passphrase: await deps.secrets.hash(passphrase) })
  if (outcome.kind === 'done') await deps.people.removeDevicesOf(person.id)
  return outcome
}

const bench = ({ now }: PeopleDeps): Person => ({
  id: benchItself,
  name: 'The bench',
  role: 'keeper',
  passphrase: null,
  addedAt: now(),
  goneAt: null,
})

const put = async ({ people }: PeopleDeps, person: Person): Promise<PeopleOutcome> => {
  const kept = await people.putPerson(person)
  return kept.kind === 'kept' ? { kind: 'done', person } : { kind: 'not-kept', problems: [kept.problem] }
}

/** The one of this name, whatever its case. */
export const named = (there: readonly Person[], name: string): Person | undefined =>
  there.find((one) => plain(one.name) === plain(name))

const plain = (name: string): string => name.trim().normalize('NFKC').toLowerCase()

const nameProblems = (there: readonly Person[], name: string): Problem[] => {
  const parsed = personSchema.shape.name.safeParse(name)
  if (!parsed.success) return [problem('no-name', 'name', 'A name has 1 to 60 characters', 'Give one')]
  if (named(there, name) === undefined) return []
  return [
    problem(
      'name-taken',
      'name',
      `There is somebody called “${name.trim()}” already`,
      'Add something to tell them apart',
    ),
  ]
}

const anotherKeeps = (there: readonly Person[], person: Person): boolean =>
  there.some(({ id, role }) => id !== person.id && role === 'keeper')

const nobody = (name: string, there: readonly Person[]): Problem =>
  problem(
    'nobody-of-this-name',
    'name',
    `Nobody is called “${name}”`,
    there.length === 0 ? 'Add them first' : `There are: ${there.map((one) => one.name).join(', ')}`,
  )

/** Where people have names there is no passphrase of the bench. */
export const whosePassphrase = (there: readonly Person[]): Problem =>
  problem(
    'whose-passphrase',
    'name',
    'People have names here, so each has a passphrase of their own',
    `Say whose: ${there.map((one) => one.name).join(', ')}`,
  )

const firstKeeps = problem(
  'first-keeps-the-books',
  'role',
  'The first person keeps the books, or nobody could add others',
  'Give the role keeper',
)
const lastKeeper = problem('last-keeper', 'role', 'Nobody else keeps the books', 'Make somebody else keeper first')
