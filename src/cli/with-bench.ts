import type { Command } from 'commander'
import type { Result } from '../base/result.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { MachineDocument } from '../bench/contract.ts'
import { stripView } from '../bench/stripping/strip-view.ts'
import type { Job } from '../machine/job.ts'
import { jobOfDocument, openBench, type OpenBench } from './bench-commands.ts'
import { machineLines } from './machine-text.ts'
import { show, showProblems, type Shell } from './output.ts'
import { placeOf, type PlaceOptions } from './store-place.ts'
import type { Names } from './who-wrote.ts'

export type Options = Record<string, string | string[] | undefined> & { readonly json: boolean } & PlaceOptions

/** Opens the bench, runs the work, closes it again. */
export const withBench = (
  shell: Shell,
  work: (bench: OpenBench, options: Options, args: readonly string[]) => Promise<number>,
) => {
  return async (...given: unknown[]): Promise<void> => {
    const command = given.at(-1) as Command
    const options = command.optsWithGlobals<Options>()
    const opened = await openBench(placeOf(options))
    if (opened.kind === 'refused') return shell.finish(showProblems(shell.output, options.json, opened.problems))
    try {
      shell.finish(await work(opened.value, options, command.args))
    } finally {
      await opened.value.close()
    }
  }
}

/** Shows what is worked out from a machine and its job, or why either was refused. */
export const answerWith = async (
  shell: Shell,
  { json }: Options,
  deps: CommandDeps,
  document: Result<MachineDocument>,
  work: (job: Job, document: MachineDocument) => number | Promise<number>,
): Promise<number> => {
  if (document.kind === 'refused') return showProblems(shell.output, json, document.problems)
  const job = await jobOfDocument(deps, document.value)
  return job.kind === 'refused' ? showProblems(shell.output, json, job.problems) : work(job.value, document.value)
}

/** Shows a machine with what follows from its notes, or why it was refused. `names`: of those who wrote them, by id. */
export const answer = async (
  shell: Shell,
  options: Options,
  deps: CommandDeps,
  result: Result<MachineDocument>,
  names?: Names,
): Promise<number> =>
  answerWith(shell, options, deps, result, (job, document) => {
    const view = shell.viewOf(job)
    const warnings = leavingWarnings(document, job)
    return show(shell.output, options.json, { ...document, view, warnings }, () => [
      ...machineLines(document, view, names),
      ...warnings.map((text) => `! ${text}`),
    ])
  })

/** What came out and is not back, and fixings left over, once the machine is closed up or has left. */
const leavingWarnings = ({ state, notes }: MachineDocument, { blueprint }: Job): readonly string[] => {
  const { isClosed, warnings } = stripView(notes, blueprint)
  return isClosed || state.left !== null ? warnings : []
}
