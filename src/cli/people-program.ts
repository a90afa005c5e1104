import { randomUUID } from 'node:crypto'
import type { Command } from 'commander'
import { problem, type Problem } from '../base/problem.ts'
import {
  addPerson,
  changeRole,
  removePerson,
  setPassphrase,
  whosePassphrase,
  type PeopleDeps,
  type PeopleOutcome,
} from '../bench/people/people-commands.ts'
import type { Secrets } from '../bench/people/people-ports.ts'
import { benchItself, standing } from '../bench/people/person.ts'
import { unknownId } from '../bench/unknown.ts'
import { roleNames, roles, type Role } from '../facts/roles.ts'
import { makeSecrets, type Cost } from '../server/sign-in/passphrase-hash.ts'
import type { OpenBench } from './bench-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { readPassphrase } from './read-passphrase.ts'
import { namesIn } from './who-wrote.ts'
import { withBench, type Options } from './with-bench.ts'

/** `thrum passphrase`, `people`, `devices` and `shut-out`: who may come in. `hashing`: as in src/facts/sign-in.ts unless given. */
export const addPeopleCommands = (
  program: Command,
  shell: Shell,
  environment: NodeJS.ProcessEnv,
  hashing?: Cost,
): void => {
  const asked = { environment, secrets: makeSecrets(hashing) }
  program
    .command('passphrase')
    .description(
      'set the passphrase of the bench, or of a person; typed at the terminal, or from THRUM_PASSPHRASE_FILE',
    )
    .option('--person <name>', 'whose, where people have names')
    .action(withBench(shell, (bench, options) => passphrase(shell, bench, options, asked)))
  program
    .command('people [what] [name]')
    .description('who has a name at the bench; add NAME, role NAME or remove NAME changes it')
    .option('--role <role>', `${roles.join(' or ')}: bench works at it, keeper sees the books and the money too`)
    .action(
      withBench(shell, async (bench, options, [what, name = '']) =>
        what === undefined
          ? listPeople(shell, bench, options)
          : changePeople(shell, bench, options, { what, name, ...asked }),
      ),
    )
  program
    .command('devices')
    .description('the devices that are signed in')
    .action(withBench(shell, (bench, options) => listDevices(shell, bench, options)))
  program
    .command('shut-out <device>')
    .description('shut a device out by its id, or the beginning of it; it has to sign in anew')
    .action(withBench(shell, (bench, options, [id = '']) => shutOut(shell, bench, options, id)))
}

type Asked = { readonly environment: NodeJS.ProcessEnv; readonly secrets: Secrets }

const depsOf = ({ people }: OpenBench, { secrets }: Pick<Asked, 'secrets'>): PeopleDeps => ({
  people,
  secrets,
  now: () => new Date().toISOString(),
  newId: randomUUID,
})

const passphrase = async (shell: Shell, bench: OpenBench, options: Options, asked: Asked): Promise<number> => {
  const there = standing(await bench.people.people())
  // Said before anything is typed for nothing.
  if (options['person'] === undefined && there.length > 0)
    return showProblems(shell.output, options.json, [whosePassphrase(there)])
  const read = await readPassphrase(asked.environment)
  if (read.kind === 'refused') return showProblems(shell.output, options.json, read.problems)
  const person = typeof options['person'] === 'string' ? options['person'] : null
  return answer(shell, options, await setPassphrase(depsOf(bench, asked), person, read.value), 'Passphrase set')
}

const changePeople = async (
  shell: Shell,
  bench: OpenBench,
  options: Options,
  asked: Asked & { readonly what: string; readonly name: string },
): Promise<number> => {
  const { what, name, environment } = asked
  const deps = depsOf(bench, asked)
  const problems = askedProblems(what, name, options['role'])
  if (problems.length > 0) return showProblems(shell.output, options.json, problems)
  const role = options['role'] as Role
  if (what === 'remove') return answer(shell, options, await removePerson(deps, name), 'Taken off')
  if (what === 'role') return answer(shell, options, await changeRole(deps, name, role), 'Role changed')
  const read = await readPassphrase(environment)
  if (read.kind === 'refused') return showProblems(shell.output, options.json, read.problems)
  return answer(shell, options, await addPerson(deps, { name, role, passphrase: read.value }), 'Added')
}

const ways = ['add', 'role', 'remove'] as const

const askedProblems = (what: string, name: string, role: Options[string]): readonly Problem[] => [
  ...((ways as readonly string[]).includes(what) ? [] : [unknownId('way', 'what', what, ways)]),
  ...(name === '' ? [problem('no-name', 'name', 'No name is given', 'Give one, such as thrum people add Ada')] : []),
  ...(what === 'remove' ? [] : roleProblems(role)),
]

const roleProblems = (role: Options[string]): readonly Problem[] => {
  if (role === undefined) return [noRole]
  return (roles as readonly unknown[]).includes(role) ? [] : [unknownId('role', '--role', String(role), roles)]
}

const noRole = problem(
  'no-role',
  '--role',
  'It is not said what they may do',
  'Add --role keeper for the books and everything, or --role bench for work at the bench',
)

const answer = (shell: Shell, options: Options, outcome: PeopleOutcome, done: string): number => {
  if (outcome.kind !== 'done') return showProblems(shell.output, options.json, outcome.problems)
  const { passphrase: _kept, ...person } = outcome.person
  const whose = person.id === benchItself ? '' : `: ${person.name}, ${roleNames[person.role]}`
  return show(shell.output, options.json, { person }, () => [`${done}${whose}.`])
}

const listPeople = async (shell: Shell, { people }: OpenBench, options: Options): Promise<number> => {
  const there = standing(await people.people()).map(({ passphrase: _kept, ...shown }) => shown)
  return show(shell.output, options.json, { people: there }, () =>
    there.length === 0
      ? ['Nobody has a name here. The bench is one for all; thrum people add NAME --role keeper changes that.']
      : there.map(({ name, role }) => `${name}: ${roleNames[role]}`),
  )
}

const listDevices = async (shell: Shell, { people }: OpenBench, options: Options): Promise<number> => {
  const names = await namesIn(people)
  const devices = (await people.devices()).map(({ id, name, person, signedInAt, seenAt, expiresAt }) => ({
    id,
    name,
    person: person === benchItself ? null : (names.get(person) ?? null),
    signedInAt,
    seenAt,
    expiresAt,
  }))
  return show(shell.output, options.json, { devices }, () =>
    devices.length === 0
      ? ['No device is signed in.']
      : devices.map(
          (one) => `${one.id.slice(0, 8)}  ${[one.person, one.name].filter(Boolean).join(', ')}, seen ${one.seenAt}`,
        ),
  )
}

const shutOut = async (shell: Shell, { people }: OpenBench, options: Options, id: string): Promise<number> => {
  const meant = (await people.devices()).filter((one) => one.id.startsWith(id))
  const [device] = meant
  if (device === undefined || meant.length > 1) {
    const what = device === undefined ? `No device begins with “${id}”` : `${meant.length} devices begin like this`
    return showProblems(shell.output, options.json, [problem('unknown-device', 'device', what, 'See thrum devices')])
  }
  const outcome = await people.removeDevice(device.id)
  if (outcome.kind === 'not-kept') return showProblems(shell.output, options.json, [outcome.problem])
  return show(shell.output, options.json, { shutOut: device.id }, () => [`Shut out: ${device.name}.`])
}
