import type { Command } from 'commander'
import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { MachineDocument } from '../bench/contract.ts'
import { functionsView, type AnswerableRow, type FunctionAnswer } from '../bench/functions/functions-view.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { unknownId } from '../bench/unknown.ts'
import { findMachine, jobOfDocument, writeNote } from './bench-commands.ts'
import { functionLines } from './functions-text.ts'
import { show, showProblems, type Shell } from './output.ts'
import { answerWith, withBench, type Options } from './with-bench.ts'

/** `thrum functions` and `thrum tried`: does it all work, and what came of trying it. */
export const addFunctionCommands = (program: Command, shell: Shell): void => {
  program
    .command('functions <machine>')
    .description('does it all work: every function to try before the sale, how, and what good looks like')
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '']) =>
        functionsAnswer(shell, options, deps, await findMachine(deps, wanted)),
      ),
    )
  program
    .command('tried <machine> <function> <result>')
    .description('a function was tried: good, bad, not-there, cannot-tell, or what its check shows')
    .option('--text <words>', 'a word on it', '')
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '', id = '', result = '']) => {
        const document = await findMachine(deps, wanted)
        if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
        const note = await noteOf(deps, document.value, id, result, options)
        if (note.kind === 'refused') return showProblems(shell.output, options.json, note.problems)
        const written = await writeNote(deps, document.value, note.value)
        return functionsAnswer(shell, options, deps, await withWord(deps, written, note.value, options))
      }),
    )
}

/** A reading has no words of its own: they follow it as a note. */
const withWord = async (
  deps: CommandDeps,
  written: Result<MachineDocument>,
  note: NoteContentInput,
  options: Options,
): Promise<Result<MachineDocument>> =>
  written.kind === 'refused' || note.kind !== 'reading' || wordOf(options) === ''
    ? written
    : writeNote(deps, written.value, { kind: 'said', text: wordOf(options) })

const functionsAnswer = (
  shell: Shell,
  options: Options,
  deps: CommandDeps,
  document: Result<MachineDocument>,
): Promise<number> =>
  answerWith(shell, options, deps, document, (job, { state }) => {
    const view = functionsView(job)
    return show(shell.output, options.json, view, () => functionLines(state.name, view))
  })

const noteOf = async (
  deps: CommandDeps,
  document: MachineDocument,
  id: string,
  result: string,
  options: Options,
): Promise<Result<NoteContentInput>> => {
  const job = await jobOfDocument(deps, document)
  if (job.kind === 'refused') return job
  const { rows } = functionsView(job.value)
  const row = rows.find((one) => one.id === id)
  if (row === undefined) {
    return refused(
      unknownId(
        'function',
        'function',
        id,
        rows.map((one) => one.id),
      ),
    )
  }
  const answer = answerOf(row, result)
  if (answer.kind === 'refused') return answer
  const { note } = answer.value
  return ok(note.kind === 'tried' ? { ...note, text: wordOf(options) } : note)
}

const wordOf = ({ text }: Options): string => (typeof text === 'string' ? text : '')

/** Good is the first outcome of a check; bad must be named where it can be one of several. */
const answerOf = ({ answers, outcomes, name }: AnswerableRow, result: string): Result<FunctionAnswer> => {
  const [good, ...bad] = answers.slice(0, outcomes.length)
  const wanted = answers.find(({ id }) => id === result) ?? (result === 'good' ? good : undefined)
  if (wanted !== undefined) return ok(wanted)
  const ids = answers.map(({ id }) => id)
  if (result !== 'bad') return refused(unknownId('result', 'result', result, [...new Set(['good', 'bad', ...ids])]))
  const [only] = bad
  if (only !== undefined && bad.length === 1) return ok(only)
  return refused(
    problem(
      'which-bad',
      'result',
      `“${name}” can be bad in several ways, and which of them is not said`,
      `Give one of ${bad.map((one) => `${one.id} (${one.name})`).join(', ')}`,
    ),
  )
}
