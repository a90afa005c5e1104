import type { Command } from 'commander'
import { moneyFromText } from '../base/money.ts'
import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { cleanView, type CleanView } from '../bench/cleaning/clean-view.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { MachineDocument } from '../bench/contract.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { makeReckoner } from '../bench/prices/reckoner.ts'
import { whatToAsk } from '../bench/prices/what-to-ask.ts'
import { cleaningCostMinor, cleaningTask, cleaningTaskIds } from '../facts/cleaning-tasks.ts'
import type { Job } from '../machine/job.ts'
import { atOptions, typedNumber } from './at-options.ts'
import { findMachine, writeNote } from './bench-commands.ts'
import { cleanLines } from './clean-text.ts'
import { exitCodes, show, showProblems, type Shell } from './output.ts'
import { answerWith, withBench, type Options } from './with-bench.ts'

/** `thrum clean`, `cleaned`, `dry` and `grade`: what is worth cleaning, what dries, how it looks. */
export const addCleanCommands = (program: Command, shell: Shell): void => {
  program
    .command('clean <machine>')
    .description('what is worth cleaning, by money for each minute; what dries; how it looks')
    .option('--calendar', 'what dries, as a calendar for a phone (RFC 5545)')
    .action(
      withBench(shell, async ({ deps }, options, [machine = '']) =>
        answerClean(shell, options, deps, await findMachine(deps, machine)),
      ),
    )
  program
    .command('cleaned <machine> <task>')
    .description(`note that something is cleaned: ${cleaningTaskIds.join(', ')}, other`)
    .option('--part <id>', 'the part, where it is done to one of several')
    .option('--minutes <number>', 'minutes it took; left out, those that it usually takes')
    .option('--cost <money>', 'materials; left out, what they usually cost')
    .option('--damp', 'it dries in a cold or damp room')
    .option('--dry-hours <number>', 'how long it has to dry; left out, as long as it usually takes')
    .option('--text <words>', 'a word on it', '')
    .action(
      withBench(shell, async ({ deps }, options, [machine = '', task = '']) =>
        writeAndAnswer(shell, options, deps, machine, ({ state }) => cleanedContent(task, options, state.currency)),
      ),
    )
  program
    .command('dry <machine> <note>')
    .description('note that what was washed in that note is felt and found dry')
    .action(
      withBench(shell, async ({ deps }, options, [machine = '', note = '']) =>
        writeAndAnswer(shell, options, deps, machine, () => ok({ kind: 'dried', note })),
      ),
    )
  program
    .command('grade <machine> <part> <grade>')
    .description('note how a part looks: A, B, C or D')
    .option('--when <time>', 'before or after the cleaning', 'after')
    .option('--text <words>', 'a word on it', '')
    .action(
      withBench(shell, async ({ deps }, options, [machine = '', part = '', grade = '']) =>
        writeAndAnswer(shell, options, deps, machine, () =>
          ok({ kind: 'graded', part, when: options['when'], grade, text: options['text'] } as NoteContentInput),
        ),
      ),
    )
}

const cleanedContent = (
  task: string,
  options: Options,
  currency: MachineDocument['state']['currency'],
): Result<NoteContentInput> => {
  const { part, minutes, cost, damp, dryHours, text } = options
  const usual = cleaningTask(task)
  const usualCost = usual === undefined ? 0 : cleaningCostMinor(usual, currency)
  const costMinor = typeof cost === 'string' ? moneyFromText(cost) : usualCost
  if (costMinor === null)
    return refused(problem('not-money', '--cost', `“${String(cost)}” is not an amount of money`, 'Write such as 3.20'))
  const hours = dryHours === undefined ? usual?.dries?.[damp === undefined ? 'warm' : 'damp'] : typedNumber(dryHours)
  return ok({
    kind: 'cleaned',
    task,
    ...(part === undefined ? {} : { part }),
    minutes: minutes === undefined ? (usual?.minutes ?? 0) : typedNumber(minutes),
    costMinor,
    ...(hours === undefined ? {} : { dryHours: hours }),
    text,
  } as NoteContentInput)
}

const cleanOptions = { minutes: '--minutes', costMinor: '--cost', dryHours: '--dry-hours', text: '--text' }

const writeAndAnswer = async (
  shell: Shell,
  options: Options,
  deps: CommandDeps,
  machine: string,
  contentOf: (document: MachineDocument) => Result<NoteContentInput>,
): Promise<number> => {
  const document = await findMachine(deps, machine)
  if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
  const content = contentOf(document.value)
  if (content.kind === 'refused') return showProblems(shell.output, options.json, content.problems)
  return answerClean(
    shell,
    options,
    deps,
    await writeNote(deps, document.value, content.value, atOptions(cleanOptions)),
  )
}

const answerClean = (
  shell: Shell,
  options: Options,
  deps: CommandDeps,
  found: Result<MachineDocument>,
): Promise<number> =>
  answerWith(shell, options, deps, found, async (job, document) => {
    const now = deps.now()
    const view = await cleaningOf(deps, job, document, now)
    if (view.kind === 'refused') return showProblems(shell.output, options.json, view.problems)
    if (options['calendar'] !== undefined && !options.json) {
      shell.output.out(view.value.calendar ?? 'Nothing is drying')
      return exitCodes.fine
    }
    return show(shell.output, options.json, view.value, () => cleanLines(document.state, view.value, now))
  })

const cleaningOf = async (
  deps: CommandDeps,
  job: Job,
  { state, notes }: MachineDocument,
  now: string,
): Promise<Result<CleanView>> => {
  const asked = await whatToAsk({ ...deps, reckoner: makeReckoner() }, job, state)
  return asked.kind === 'refused' ? asked : ok(cleanView({ state, notes, job, asking: asked.value.asking, now }))
}
