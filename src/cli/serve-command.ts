import type { Command } from 'commander'
import { startServer } from '../server/serve.ts'
import { showProblems, type Shell } from './output.ts'

const defaultPort = 4170

/** `thrum serve`: the pages and the API on this machine only. */
export const addServeCommand = (program: Command, shell: Shell): void => {
  program
    .command('serve')
    .description('serve the pages on this machine')
    .option('--port <number>', 'port; 0 for any free one', String(defaultPort))
    .action(async (_options: unknown, command: Command) => {
      const options = command.optsWithGlobals<{ data: string; json: boolean; port: string }>()
      const started = await startServer({ folder: options.data, port: Number(options.port), host: '127.0.0.1' })
      if (started.kind === 'refused') return shell.finish(showProblems(shell.output, options.json, started.problems))
      await started.value.stopped
    })
}
