import { randomUUID } from 'node:crypto'
import type { AddressInfo } from 'node:net'
import { setImmediate } from 'node:timers/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { createAdaptorServer } from '@hono/node-server'
import pino from 'pino'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { fillDemoBench } from '../bench/demo.ts'
import { blueprintById, blueprints } from '../blueprint/library.ts'
import { machineView } from '../machine/index.ts'
import { memoryBench } from '../store/memory/bench.ts'
import { filledWhenAsked } from '../store/memory/filled-when-asked.ts'
import { filePhotoStore } from '../store/files/photo-store.ts'
import { openStore, type OpenStore } from '../store/sqlite/open-store.ts'
import { makeApp, type LogEntry } from './app.ts'
import { readStaticFiles } from './static-files.ts'

export type ServeOptions = {
  /** Where the store is kept. */
  readonly folder: string
  /** 0 for any free one. */
  readonly port: number
  /** The address to listen on; 127.0.0.1 lets only this machine in. */
  readonly host: string
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
  const store = await openStore({ folder: options.folder })
  if (store.kind === 'refused') return store
  const server = createAdaptorServer({ fetch: (await makeServerApp(options, store.value)).fetch })
  const listening = await listen(server, options)
  if (listening.kind === 'refused') {
    await store.value.close()
    return listening
  }
  const running = stoppable(listening.value, server, store.value.close)
  const print = options.print ?? ((line) => process.stdout.write(`${line}\n`))
  print(running.address)
  return ok(running)
}

type Server = ReturnType<typeof createAdaptorServer>

const makeServerApp = async (options: ServeOptions, store: OpenStore) => {
  const stores = memoryBench()
  const demo = filledWhenAsked(stores, () => fillDemoBench({ stores, blueprintById, pause: setImmediate }))
  const { notes, logs, books, blueprints: ownBlueprints, settings } = store
  return makeApp({
    benches: { own: { notes, logs, books }, demo },
    blueprints,
    ownBlueprints,
    settings,
    photos: filePhotoStore(join(options.folder, 'photos')),
    machineView,
    now: () => new Date().toISOString(),
    newId: randomUUID,
    pages: await readStaticFiles(pagesFolder()),
    hosts: loopback.includes(options.host) ? loopback : null,
    log: logger(options.log === true),
  })
}

const loopback: readonly string[] = ['127.0.0.1', 'localhost', '[::1]', '::1']

/** Beside the built program, or where the build puts the pages when the program runs from its sources. */
const pagesFolder = (): string =>
  fileURLToPath(new URL(import.meta.url.endsWith('.ts') ? '../../dist/web' : '../web', import.meta.url))

/** Standard output stays free for the address. */
const logger = (asked: boolean): ((entry: LogEntry) => void) => {
  if (!asked) return () => {}
  const log = pino({ level: 'debug' }, pino.destination({ dest: 2, sync: true }))
  return (entry) => {
    if (entry.kind === 'answered') log.debug(entry)
    else log.error({ ...entry, thrown: undefined, err: entry.thrown })
  }
}

const listen = (server: Server, { port, host }: ServeOptions): Promise<Result<string>> =>
  new Promise((resolve) => {
    server.once('error', (fault: NodeJS.ErrnoException) => resolve(refused(listenProblem(fault, host, port))))
    server.listen(port, host, () => {
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

const stoppable = (address: string, server: Server, closeStore: () => Promise<void>): RunningServer => {
  let stopping: Promise<void> | undefined
  let tell: () => void = () => {}
  const stopped = new Promise<void>((resolve) => (tell = resolve))
  const stop = (): Promise<void> => (stopping ??= shutDown(server, closeStore).then(tell))
  const onSignal = (): void => void stop()
  const signals = ['SIGINT', 'SIGTERM'] as const
  for (const signal of signals) process.on(signal, onSignal)
  void stopped.then(() => signals.forEach((signal) => process.off(signal, onSignal)))
  return { address, stop, stopped }
}

const shutDown = async (server: Server, closeStore: () => Promise<void>): Promise<void> => {
  const closed = new Promise<void>((resolve) => server.close(() => resolve()))
  if ('closeIdleConnections' in server) server.closeIdleConnections()
  const late = setTimeout(() => 'closeAllConnections' in server && server.closeAllConnections(), patienceMs)
  await closed
  clearTimeout(late)
  await closeStore()
}
