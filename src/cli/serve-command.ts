import type { Command } from 'commander'
import { problem } from '../base/problem.ts'
import { startServer } from '../server/serve.ts'
import { showProblems, type Shell } from './output.ts'

const defaultPort = 4170
const highestPort = 65_535

/** `thrum serve`: the pages and the API on this machine only. */
export const addServeCommand = (program: Command, shell: Shell): void => {
  program
    .command('serve')
    .description('serve the pages on this machine')
    .option('--port <number>', 'port; 0 for any free one', String(defaultPort))
    .action(async (_options: unknown, command: Command) => {
      const options = command.optsWithGlobals<{ data: string; json: boolean; port: string }>()
      const port = /^\d{1,5}$/.test(options.port) ? Number(options.port) : Infinity
      if (port > highestPort) return shell.finish(showProblems(shell.output, options.json, [noSuchPort(options.port)]))
      const started = await startServer({ folder: options.data, port, host: '127.0.0.1' })
      if (started.kind === 'refused') return shell.finish(showProblems(shell.output, options.json, started.problems))
      await started.value.stopped
    })
}

const noSuchPort = (text: string) =>
  problem('no-such-port', '--port', `“${text}” is not a port`, `Write a whole number from 0 to ${highestPort}`)
