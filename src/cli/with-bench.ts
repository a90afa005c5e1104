import type { Command } from 'commander'
import type { Result } from '../base/result.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { MachineDocument } from '../bench/contract.ts'
import { machineView } from '../machine/index.ts'
import { jobOfDocument, openBench, type OpenBench } from './bench-commands.ts'
import { machineLines } from './machine-text.ts'
import { show, showProblems, type Shell } from './output.ts'

export type Options = Record<string, string | string[] | undefined> & { readonly json: boolean; readonly data: string }

/** Opens the bench, runs the work, closes it again. */
export const withBench = (
  shell: Shell,
  work: (bench: OpenBench, options: Options, args: readonly string[]) => Promise<number>,
) => {
  return async (...given: unknown[]): Promise<void> => {
    const command = given.at(-1) as Command
    const options = command.optsWithGlobals<Options>()
    const opened = await openBench(options.data)
    if (opened.kind === 'refused') return shell.finish(showProblems(shell.output, options.json, opened.problems))
    try {
      shell.finish(await work(opened.value, options, command.args))
    } finally {
      await opened.value.close()
    }
  }
}

/** Shows a machine with what follows from its notes, or why it was refused. */
export const answer = async (
  shell: Shell,
  options: Options,
  deps: CommandDeps,
  result: Result<MachineDocument>,
): Promise<number> => {
  if (result.kind === 'refused') return showProblems(shell.output, options.json, result.problems)
  const job = await jobOfDocument(deps, result.value)
  if (job.kind === 'refused') return showProblems(shell.output, options.json, job.problems)
  const view = machineView(job.value)
  return show(shell.output, options.json, { ...result.value, view }, () => machineLines(result.value, view))
}
