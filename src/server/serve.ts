import { randomUUID } from 'node:crypto'
import type { AddressInfo } from 'node:net'
import { setImmediate } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { createAdaptorServer } from '@hono/node-server'
import pino from 'pino'
import { problem, problemText, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { fillDemoBench } from '../bench/demo.ts'
import { setPassphrase } from '../bench/people/people-commands.ts'
import type { PeopleStore } from '../bench/people/people-ports.ts'
import { benchItself } from '../bench/people/person.ts'
import { signInBy } from '../bench/people/sign-in.ts'
import { blueprintById, blueprints } from '../blueprint/library.ts'
import { machineView } from '../machine/index.ts'
import type { AutomaticBackups } from '../store/backup/automatic.ts'
import { memoryBench } from '../store/memory/bench.ts'
import { filledWhenAsked } from '../store/memory/filled-when-asked.ts'
import { toldBench } from '../store/memory/told-bench.ts'
import { openBenchStore, type BenchStore, type StorePlace } from '../store/open-bench-store.ts'
import type { OpenStore } from '../store/sql/stores-on.ts'
import { makeApp, type LogEntry } from './app.ts'
import { backUpDaily } from './backups.ts'
import type { Hosts } from './guards.ts'
import { logEntry } from './log-entry.ts'
import { isThisMachine, namesThisMachine } from './network-addresses.ts'
import { reachedAt } from './reached-at.ts'
import { makeSecrets, type Cost } from './sign-in/passphrase-hash.ts'
import { servedAccess } from './sign-in/served-access.ts'
import { readStaticFiles } from './static-files.ts'

export type ServeOptions = StorePlace & {
  /** 0 for any free one. */
  readonly port: number
  /** The address to listen on; 127.0.0.1 lets only this machine in. */
  readonly host: string
  /** Lets others of the network in; nobody without signing in. */
  readonly network?: boolean
  /** The name under which a proxy in front is reached; it is believed as to who asks and over what. */
  readonly behindProxy?: string | undefined
  /** The passphrase of the bench, where it is given at every start; with people it counts for nothing. */
  readonly passphrase?: string | undefined
  /** What hashing a passphrase costs; as in src/facts/sign-in.ts unless given. */
  readonly hashing?: Cost
  /** Where a backup is made a day, and how many of them are kept; none are made where it is left out. */
  readonly backups?: AutomaticBackups | undefined
  /** Logs each request to standard error. */
  readonly log?: boolean
  /** Told the address once, when the program answers. Standard output unless given. */
  readonly print?: (line: string) => void
}

export type RunningServer = {
  readonly address: string
  /** Answers what was asked, then closes the store. */
  readonly stop: () => Promise<void>
  /** Fulfilled when the program has stopped, by `stop` or by SIGINT or SIGTERM. */
  readonly stopped: Promise<void>
}

/** How long a request that was begun may take when the program stops. */
const patienceMs = 3000

/**
 * Opens the store and serves it, and the demonstration bench, until told to stop. The demonstration is made when it is first asked for.
 * Refused when the folder cannot be written or the port is taken.
 */
export const startServer = async (options: ServeOptions): Promise<Result<RunningServer>> => {
  const store = await openBenchStore(options)
  if (store.kind === 'refused') return store
  store.value.warnings.forEach((one) => process.stderr.write(`${problemText(one)}\n`))
  const stopping = new AbortController()
  const listening = await mayOpen(options, store.value, async () => {
    const { fetch } = await makeServerApp(options, store.value, stopping.signal)
    return listenTwice(() => createAdaptorServer({ fetch }), options)
  })
  if (listening.kind === 'refused') {
    await store.value.close()
    return listening
  }
  const { address, servers } = listening.value
  const endBackups = beginBackups(options, store.value)
  const close = () => endBackups().then(store.value.close)
  const running = stoppable(address, servers, close, stopping)
  const print = options.print ?? ((line) => process.stdout.write(`${line}\n`))
  print(running.address)
  if (options.behindProxy !== undefined)
    print(`By others, through the web server in front: https://${options.behindProxy}`)
  if (options.network === true) reachedAt(Number(new URL(address).port)).forEach(print)
  return ok(running)
}

/** Says where they go; gives what ends them. */
const beginBackups = (options: ServeOptions, store: BenchStore): (() => Promise<void>) => {
  const { backups } = options
  if (backups === undefined) return () => Promise.resolve()
  const tell = (line: string): void => void process.stderr.write(`${line}\n`)
  tell(`A backup a day goes to ${backups.folder}; the newest ${backups.keep} are kept`)
  return backUpDaily(options, store, backups, tell)
}

const isOpen = ({ network, behindProxy }: ServeOptions): boolean => network === true || behindProxy !== undefined

/** Nobody else is let near the program before there is a passphrase. */
const mayOpen = async <T>(
  options: ServeOptions,
  { people }: OpenStore,
  open: () => Promise<Result<T>>,
): Promise<Result<T>> => {
  const set = await passphraseSet(options, people)
  if (set.kind === 'refused') return set
  return isOpen(options) && signInBy(await people.people()) === 'nothing' ? refused(noPassphrase) : open()
}

/** Takes the passphrase that was given over into the store, unless it is the one there or people have their own. */
const passphraseSet = async ({ passphrase, hashing }: ServeOptions, people: PeopleStore): Promise<Result<null>> => {
  const all = await people.people()
  if (passphrase === undefined || signInBy(all) === 'name') return ok(null)
  const deps = { people, secrets: makeSecrets(hashing), now: () => new Date().toISOString(), newId: randomUUID }
  const kept = all.find(({ id }) => id === benchItself)?.passphrase ?? null
  if (await deps.secrets.matches(passphrase, kept)) return ok(null)
  const outcome = await setPassphrase(deps, null, passphrase)
  return outcome.kind === 'done' ? ok(null) : refused(...(outcome.problems as readonly [Problem]))
}

const noPassphrase = problem(
  'no-passphrase',
  'passphrase',
  'Others would reach the program, and there is no passphrase to keep strangers out',
  'Set one with `thrum passphrase`, or give people names with `thrum people add NAME --role keeper`',
)

type Server = ReturnType<typeof createAdaptorServer>

const makeServerApp = async (options: ServeOptions, store: BenchStore, stopping: AbortSignal) => {
  const stores = memoryBench()
  const filled = filledWhenAsked(stores, () => fillDemoBench({ stores, blueprintById, pause: setImmediate }))
  const demo = toldBench(filled, 'demo')
  const { notes, logs, books, blueprints: ownBlueprints, settings, people, photos, originals } = store
  return makeApp({
    benches: { own: { notes, logs, books }, demo: demo.stores },
    blueprints,
    ownBlueprints,
    settings,
    photos,
    originals,
    changes: { subscribe: (bench, listener) => (bench === 'demo' ? demo : store).changes.subscribe(bench, listener) },
    stopping,
    machineView,
    now: () => new Date().toISOString(),
    newId: randomUUID,
    pages: await readStaticFiles(pagesFolder()),
    hosts: hostsOf(options),
    access: servedAccess(people, {
      isOpen: isOpen(options),
      isBehindProxy: options.behindProxy !== undefined,
      hashing: options.hashing,
    }),
    log: logger(options.log === true ? 'info' : isOpen(options) ? 'warn' : null),
  })
}

const hostsOf = ({ network, behindProxy }: ServeOptions): Hosts => {
  const given = behindProxy === undefined ? [] : [behindProxy.toLowerCase()]
  if (network === true) return namesThisMachine(given)
  return (host) => isThisMachine(host) || given.includes(host)
}

/** Beside the built program, or where the build puts the pages when the program runs from its sources. */
const pagesFolder = (): string =>
  fileURLToPath(new URL(import.meta.url.endsWith('.ts') ? '../../dist/web' : '../web', import.meta.url))

/** Standard output stays free for the address. */
const logger = (level: 'info' | 'warn' | null): ((entry: LogEntry) => void) => {
  if (level === null) return () => {}
  return logEntry(pino({ level }, pino.destination({ dest: 2, sync: true })))
}

type Listening = { readonly address: string; readonly servers: readonly Server[] }

/** Listens by IPv4, and by IPv6 beside it where the machine has that: browsers take `localhost` for either. */
const listenTwice = async (make: () => Server, options: ServeOptions): Promise<Result<Listening>> => {
  const first = make()
  const listening = await listen(first, options)
  if (listening.kind === 'refused') return listening
  const second = make()
  const port = Number(new URL(listening.value).port)
  const beside = alsoAs[options.host]
  const also = beside === undefined ? null : await listen(second, { ...options, host: beside, port })
  return ok({ address: shownAddress(listening.value), servers: also?.kind === 'ok' ? [first, second] : [first] })
}

const alsoAs: Readonly<Record<string, string>> = { '127.0.0.1': '::1', '0.0.0.0': '::' }
const shownAddress = (address: string): string => address.replace('//0.0.0.0:', '//127.0.0.1:')

const listen = (server: Server, { port, host }: ServeOptions): Promise<Result<string>> =>
  new Promise((resolve) => {
    server.once('error', (fault: NodeJS.ErrnoException) => resolve(refused(listenProblem(fault, host, port))))
    server.listen({ port, host, ipv6Only: host === '::' }, () => {
      const { port: taken } = server.address() as AddressInfo
      resolve(ok(`http://${host.includes(':') ? `[${host}]` : host}:${taken}`))
    })
  })

const listenProblem = (fault: NodeJS.ErrnoException, host: string, port: number): Problem => {
  const where = `${host}:${port}`
  if (fault.code === 'EADDRINUSE') {
    return problem('port-taken', where, 'Another program listens there', 'Stop it, or give another port')
  }
  if (fault.code === 'EACCES') {
    return problem('port-not-allowed', where, 'This port is not free for everyone', 'Give a port above 1023')
  }
  return problem(
    'cannot-listen',
    where,
    `It cannot be listened on (${fault.code ?? fault.message})`,
    'Give another host or port',
  )
}

const stoppable = (
  address: string,
  servers: readonly Server[],
  closeStore: () => Promise<void>,
  stopping: AbortController,
): RunningServer => {
  let ending: Promise<void> | undefined
  let tell: () => void = () => {}
  const stopped = new Promise<void>((resolve) => (tell = resolve))
  const stop = (): Promise<void> => (ending ??= shutDown(servers, closeStore, stopping).then(tell))
  const onSignal = (): void => void stop()
  const signals = ['SIGINT', 'SIGTERM'] as const
  for (const signal of signals) process.on(signal, onSignal)
  void stopped.then(() => signals.forEach((signal) => process.off(signal, onSignal)))
  return { address, stop, stopped }
}

const shutDown = async (
  servers: readonly Server[],
  closeStore: () => Promise<void>,
  stopping: AbortController,
): Promise<void> => {
  stopping.abort()
  await Promise.all(servers.map(closeServer))
  await closeStore()
}

/** Takes no more requests, lets those that were begun end, and cuts off what takes too long. */
const closeServer = async (server: Server): Promise<void> => {
  const closed = new Promise<void>((resolve) => server.close(() => resolve()))
  if ('closeIdleConnections' in server) server.closeIdleConnections()
  const late = setTimeout(() => 'closeAllConnections' in server && server.closeAllConnections(), patienceMs)
  await closed
  clearTimeout(late)
}
