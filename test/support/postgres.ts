import { execFileSync, spawn } from 'node:child_process'
import { randomUUID } from 'node:crypto'
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'

/** A real PostgreSQL server of the tests' own: a folder of its own, a free port, gone when this program ends. */
export type PostgresServer = {
  /** The address of a new empty database. */
  readonly newDatabase: (options?: string) => Promise<string>
  /** The address of a database of this server, for a user who may do anything. */
  readonly addressOf: (database: string, user?: string) => string
  /** Ends it as a loss of power would: nothing is written any more. */
  readonly kill: () => Promise<void>
  /** Starts it again after `kill`, on the same port. */
  readonly start: () => Promise<void>
  readonly stop: () => Promise<void>
}

/** Debian keeps the programs of each version in a folder of its own; elsewhere they are found by their names. */
const programFolder = (): string | null => {
  const debian = '/usr/lib/postgresql'
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : []
  const folders = [
    ...versions.map((version) => join(debian, version, 'bin')),
    ...(process.env['PATH'] ?? '').split(':'),
  ]
  return folders.find((folder) => existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'postgres'))) ?? null
}

/** Whether there is a PostgreSQL to test against. In CI there has to be; elsewhere it is said once that there is none. */
export const postgresHere = (): boolean => {
  const there = programFolder() !== null
  if (!there && process.env['CI'] !== undefined) throw new Error('CI tests against PostgreSQL: install postgresql')
  if (!there && !said) console.warn('No PostgreSQL here (initdb, postgres): what needs it is left out')
  said = true
  return there
}
let said = false

/** The server refuses to run as root; Debian's package makes the user postgres. */
const asItsUser = (program: string, args: readonly string[]): readonly [string, readonly string[]] =>
  process.getuid?.() === 0 ? ['runuser', ['-u', 'postgres', '--', program, ...args]] : [program, args]

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const server = createServer()
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0))
    })
  })

/** The settings of a server that may forget everything at a loss of power, for tests that never take its power away. */
const quick = ['fsync=off', 'full_page_writes=off']

/** Starts a server. `durable`: it brings to the disk what it says it kept. */
export const startPostgres = async ({ durable = false } = {}): Promise<PostgresServer> => {
  const programs = programFolder()
  if (programs === null) throw new Error('There is no PostgreSQL here')
  const folder = mkdtempSync(join(tmpdir(), 'thrum-postgres-'))
  const data = join(folder, 'data')
  mkdirSync(data)
  if (process.getuid?.() === 0) {
    const [user, group] = ['-u', '-g'].map((flag) =>
      Number(execFileSync('id', [flag, 'postgres'], { encoding: 'utf8' })),
    )
    for (const one of [folder, data]) chownSync(one, user, group)
  }
  chmodSync(data, 0o700)
  const [initdb, args] = asItsUser(join(programs, 'initdb'), ['-D', data, '-U', 'postgres', '-A', 'trust', '-E', 'UTF8', '--locale=C', '-N']) // prettier-ignore
  execFileSync(initdb, args, { stdio: 'pipe' })
  // Those named so have to give a password, so that there is one that can be wrong.
  writeFileSync(
    join(data, 'pg_hba.conf'),
    'host all keyed 127.0.0.1/32 scram-sha-256\nhost all all 127.0.0.1/32 trust\n',
  )
  const port = await freePort()
  const settings = ['listen_addresses=127.0.0.1', 'unix_socket_directories=', `port=${port}`, 'max_connections=200', ...(durable ? [] : quick)] // prettier-ignore
  let running: Running | undefined
  const start = async (): Promise<void> => {
    running = await run(join(programs, 'postgres'), data, settings, port)
  }
  await start()
  cleanedUpAfter(folder, data)
  const addressOf = (database: string, user = 'postgres'): string => `postgres://${user}@127.0.0.1:${port}/${database}`
  return {
    addressOf,
    newDatabase: async (options = '') => {
      const name = `thrum_${randomUUID().replaceAll('-', '')}`
      await ask(addressOf('postgres'), `create database ${name} ${options}`)
      return addressOf(name)
    },
    kill: async () => running?.end('SIGQUIT'),
    start,
    stop: async () => {
      await running?.end('SIGINT')
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** Whatever becomes of this program, the server and its folder go with it: what reads from a pipe learns when the other end is gone. */
const cleanedUpAfter = (folder: string, data: string): void => {
  const script = 'cat >/dev/null; kill -QUIT "$(head -n 1 "$2/postmaster.pid")" 2>/dev/null; sleep 1; rm -rf "$1"'
  const janitor = spawn('sh', ['-c', script, 'sh', folder, data], { stdio: ['pipe', 'ignore', 'ignore'], detached: true }) // prettier-ignore
  janitor.unref()
  ;(janitor.stdin as unknown as { unref?: () => void }).unref?.()
}

/** Asks a database something over a connection of its own. */
export const ask = async (address: string, question: string): Promise<readonly Record<string, unknown>[]> => {
  const client = new pg.Client(address)
  client.on('error', () => undefined)
  await client.connect()
  try {
    return (await client.query<Record<string, unknown>>(question)).rows
  } finally {
    await client.end()
  }
}

type Running = {
  readonly end: (name: NodeJS.Signals) => Promise<void>
}

const patienceMs = 20_000
const pauseMs = 50

const run = async (program: string, data: string, settings: readonly string[], port: number): Promise<Running> => {
  const [command, all] = asItsUser(program, ['-D', data, ...settings.flatMap((one) => ['-c', one])])
  const child = spawn(command, all, { stdio: ['ignore', 'ignore', 'pipe'], detached: true })
  let words = ''
  child.stderr.on('data', (text: Buffer) => (words = `${words}${text.toString()}`.slice(-2000)))
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  for (const began = Date.now(); !(await answers(port));) {
    if (child.exitCode !== null || Date.now() - began > patienceMs)
      throw new Error(`PostgreSQL did not start: ${words}`)
    await new Promise((resolve) => setTimeout(resolve, pauseMs))
  }
  // The server itself, by the number it wrote down: what was started may be what changes the user.
  const pid = Number(readFileSync(join(data, 'postmaster.pid'), 'utf8').split('\n')[0])
  const signal = (name: NodeJS.Signals): void => {
    if (child.exitCode === null && child.signalCode === null) process.kill(pid, name)
  }
  return {
    end: async (name) => {
      signal(name)
      await ended
    },
  }
}

const answers = (port: number): Promise<boolean> =>
  ask(`postgres://postgres@127.0.0.1:${port}/postgres`, 'select 1').then(
    () => true,
    () => false,
  )

let shared: Promise<PostgresServer> | undefined

/** The one server of this run of tests in this program: started when it is first asked for. */
export const sharedPostgres = (): Promise<PostgresServer> => (shared ??= startPostgres())
