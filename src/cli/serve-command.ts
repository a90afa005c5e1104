import { resolve } from 'node:path'
import type { Command } from 'commander'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { startServer, type ServeOptions } from '../server/serve.ts'
import { backupFolder, backupsKept } from '../store/backup/backup-folder.ts'
import { showProblems, type Shell } from './output.ts'
import { passphraseInFile } from './read-passphrase.ts'
import { placeOf, type PlaceOptions } from './store-place.ts'

const defaultPort = 4170
const highestPort = 65_535

type Options = PlaceOptions & {
  readonly json: boolean
  readonly port: string
  readonly network?: boolean
  readonly behindProxy?: string
  readonly log?: boolean
  readonly backups?: string
  readonly keep: string
}

/** `thrum serve`: the pages and the API, on this machine only unless others are let in. */
export const addServeCommand = (program: Command, shell: Shell, environment: NodeJS.ProcessEnv): void => {
  program
    .command('serve')
    .description('serve the pages on this machine')
    .option('--port <number>', 'port; 0 for any free one', String(defaultPort))
    .option('--network', 'let others of the home network in, with the passphrase (see thrum passphrase)')
    .option('--behind-proxy <name>', 'the name under which a web server in front of this one is reached')
    .option('--backups <folder>', 'where a backup is made a day (or set THRUM_BACKUPS); left out, in the data folder')
    .option('--keep <number>', 'how many of them are kept; 0 makes none', String(backupsKept))
    .option('--log', 'write to standard error what was asked and what went wrong, a line of JSON each')
    .action(async (_options: unknown, command: Command) => {
      const options = command.optsWithGlobals<Options>()
      const asked = await serveOptions(options, environment)
      if (asked.kind === 'refused') return shell.finish(showProblems(shell.output, options.json, asked.problems))
      const started = await startServer(asked.value)
      if (started.kind === 'refused') return shell.finish(showProblems(shell.output, options.json, started.problems))
      await started.value.stopped
    })
}

const serveOptions = async (options: Options, environment: NodeJS.ProcessEnv): Promise<Result<ServeOptions>> => {
  const port = /^\d{1,5}$/.test(options.port) ? Number(options.port) : Infinity
  const network = options.network === true
  const keep = /^\d{1,3}$/.test(options.keep) ? Number(options.keep) : null
  const problems = [
    ...(keep === null ? [noSuchNumber(options.keep)] : []),
    ...(port > highestPort ? [noSuchPort(options.port)] : []),
    ...nameProblems(options.behindProxy),
  ]
  if (problems.length > 0) return refused(...(problems as [Problem]))
  const passphrase = await passphraseGiven(environment)
  if (passphrase.kind === 'refused') return passphrase
  return ok({
    ...placeOf(options),
    port,
    host: network ? '0.0.0.0' : '127.0.0.1',
    network,
    behindProxy: options.behindProxy,
    passphrase: passphrase.value,
    log: options.log === true,
    backups: backupsOf(options, environment, keep),
  })
}

/** Beside each other on one disk a store and its backups are lost together; that is said in the guide. */
const backupsOf = (options: Options, environment: NodeJS.ProcessEnv, keep: number | null): ServeOptions['backups'] => {
  const folder = options.backups ?? environment['THRUM_BACKUPS'] ?? backupFolder(options.data)
  return keep === null || keep === 0 ? undefined : { folder: resolve(folder), keep }
}

const noSuchNumber = (text: string): Problem =>
  problem('no-such-number', '--keep', `“${text}” is no number of backups`, 'Write a whole number from 0 to 999')

const passphraseGiven = async (environment: NodeJS.ProcessEnv): Promise<Result<string | undefined>> => {
  const file = environment['THRUM_PASSPHRASE_FILE']
  return file === undefined || file === '' ? ok(undefined) : passphraseInFile(file)
}

const hostName = /^[A-Za-z0-9]([A-Za-z0-9.-]{0,250}[A-Za-z0-9])?$/

const nameProblems = (name: string | undefined): readonly Problem[] =>
  name === undefined || hostName.test(name)
    ? []
    : [problem('no-such-name', '--behind-proxy', `“${name}” is not the name of a host`, 'Write such as bench.example')]

const noSuchPort = (text: string): Problem =>
  problem('no-such-port', '--port', `“${text}” is not a port`, `Write a whole number from 0 to ${highestPort}`)
