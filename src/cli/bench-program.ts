import type { Command } from 'commander'
import { problem, type Problem } from '../base/problem.ts'
import { moneyFromText, moneyText } from '../base/money.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { quantityFromText } from '../base/units.ts'
import type { MachineDocument } from '../bench/contract.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { machineList } from '../bench/queries.ts'
import { blueprintById } from '../blueprint/library.ts'
import { complaintIds } from '../facts/complaints.ts'
import { machineView, resultFromText, virtualComplaints, virtualResult } from '../machine/index.ts'
import type { ReadingResult } from '../machine/result.ts'
import { findMachine, jobOfDocument, openBench, writeMachine, writeNote, type OpenBench } from './bench-commands.ts'
import { machineLines } from './machine-text.ts'
import { show, showProblems, type Shell } from './output.ts'

type Options = Record<string, string | string[] | undefined> & { readonly json: boolean; readonly data: string }

/** Commands on the machines of a bench. */
export const addBenchCommands = (program: Command, shell: Shell): void => {
  addListing(program, shell)
  addAdding(program, shell)
  addNoting(program, shell)
}

/** Opens the bench, runs the work, closes it again. */
const withBench = (
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

const answer = (shell: Shell, options: Options, result: Result<MachineDocument>): number => {
  if (result.kind === 'refused') return showProblems(shell.output, options.json, result.problems)
  const job = jobOfDocument(result.value)
  if (job.kind === 'refused') return showProblems(shell.output, options.json, job.problems)
  const view = machineView(job.value)
  return show(shell.output, options.json, { ...result.value, view }, () => machineLines(result.value, view))
}

const addListing = (program: Command, shell: Shell): void => {
  program
    .command('list')
    .description('the machines on the bench')
    .action(
      withBench(shell, async ({ deps }, options) => {
        const { machines } = await machineList(deps)
        return show(shell.output, options.json, { machines }, () =>
          machines.map(
            (m) =>
              `${m.id}  ${m.name}  ${m.left === null ? 'in hand' : `left: ${m.left.exit}, profit ${moneyText(m.left.profitMinor, m.currency)}`}`,
          ),
        )
      }),
    )
  program
    .command('show <machine>')
    .description('one machine: suspects, next move, worth, notes')
    .action(
      withBench(shell, async ({ deps }, options, args) =>
        answer(shell, options, await findMachine(deps, args[0] ?? '')),
      ),
    )
}

const addAdding = (program: Command, shell: Shell): void => {
  program
    .command('add')
    .description('add a machine')
    .requiredOption('--name <words>', 'what to call it')
    .requiredOption('--blueprint <id>', 'its architecture')
    .option('--paid <money>', 'what was paid', '0')
    .option('--currency <code>', 'currency', 'GBP')
    .option('--complaint <ids...>', `what it is said to do: ${complaintIds.join(', ')}`)
    .option('--claim <words>', "the seller's words", '')
    .option('--missing <parts...>', 'parts that are not there')
    .option('--volts <quantity>', 'from the plate')
    .option('--watts <quantity>', 'from the plate')
    .option('--hertz <number>', 'from the plate')
    .option('--class <I|II>', 'from the plate')
    .option('--mass <quantity>', 'from the plate')
    .option('--practice <seed>', 'a virtual machine with a hidden fault')
    .action(
      withBench(shell, async ({ deps }, options) => {
        const content = addedContent(options)
        if (content.kind === 'refused') return showProblems(shell.output, options.json, content.problems)
        return answer(shell, options, await writeMachine(deps, content.value))
      }),
    )
}

const text = (options: Options, name: string): string | undefined => {
  const value = options[name]
  return typeof value === 'string' ? value : undefined
}

const list = (options: Options, name: string): string[] => {
  const value = options[name]
  return Array.isArray(value) ? value : []
}

const addedContent = (options: Options): Result<NoteContentInput> => {
  const blueprint = blueprintById(text(options, 'blueprint') ?? '')
  const paidMinor = moneyFromText(text(options, 'paid') ?? '0')
  const problems: Problem[] = []
  const quantity = (
    name: string,
    kind: 'voltageV' | 'powerW' | 'massKg',
    otherwise: number | undefined,
  ): number | undefined => {
    const given = text(options, name)
    if (given === undefined) return otherwise
    const read = quantityFromText(given, kind, `--${name}`)
    if (read.kind === 'ok') return read.value
    problems.push(...read.problems)
    return otherwise
  }
  const wholeNumber = (name: string): number | undefined => {
    const given = text(options, name)
    if (given === undefined || /^\d{1,10}$/.test(given)) return given === undefined ? undefined : Number(given)
    problems.push(problem('not-a-number', `--${name}`, `“${given}” is not a whole number`, 'Write such as 50'))
    return undefined
  }
  if (paidMinor === null)
    problems.push(
      problem('not-money', '--paid', `“${text(options, 'paid')}” is not an amount of money`, 'Write such as 4.50'),
    )
  const plate = blueprint?.plate
  const voltageV = quantity('volts', 'voltageV', plate?.voltageV)
  const powerW = quantity('watts', 'powerW', plate?.powerW)
  const massKg = quantity('mass', 'massKg', plate?.massKg)
  const frequencyHz = wholeNumber('hertz')
  const seed = wholeNumber('practice')
  if (problems.length > 0) return refused(...problems)
  const read = {
    voltageV: voltageV ?? 230,
    powerW: powerW ?? 1000,
    frequencyHz: frequencyHz ?? plate?.frequencyHz ?? 50,
    protectionClass: (text(options, 'class') ?? plate?.protectionClass ?? 'II') as 'I' | 'II',
    ...(massKg === undefined ? {} : { massKg }),
  }
  const practice =
    seed === undefined || blueprint === undefined
      ? null
      : { practiceSeed: seed, complaints: [...virtualComplaints(blueprint, read, seed)] }
  return ok({
    kind: 'added',
    name: text(options, 'name') ?? '',
    blueprint: text(options, 'blueprint') ?? '',
    plate: read,
    paidMinor: paidMinor ?? 0,
    currency: (text(options, 'currency') ?? 'GBP') as 'GBP',
    complaints: list(options, 'complaint') as (typeof complaintIds)[number][],
    claim: text(options, 'claim') ?? '',
    missing: list(options, 'missing'),
    ...practice,
  })
}

type Maker = (document: MachineDocument, args: readonly string[], options: Options) => Result<NoteContentInput>

const addNoting = (program: Command, shell: Shell): void => {
  const noting = (usage: string, description: string, make: Maker): Command =>
    program
      .command(usage)
      .description(description)
      .action(
        withBench(shell, async ({ deps }, options, args) => {
          const document = await findMachine(deps, args[0] ?? '')
          if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
          const content = make(document.value, args.slice(1), options)
          if (content.kind === 'refused') return showProblems(shell.output, options.json, content.problems)
          return answer(shell, options, await writeNote(deps, document.value, content.value))
        }),
      )
  noting(
    'read <machine> <check> [result]',
    'enter a reading: 4.7, 12k, open, jumps, cannot-tell, or a grade; none on a virtual machine takes it',
    readingNote,
  )
    .option('--instrument <id>', 'the meter', 'budget-multimeter')
    .option('--minutes <number>', 'minutes it took')
  noting('off <machine> <cover>', 'a cover was taken off', (document, [cover = '']) =>
    coverNote(document, 'opened', cover),
  )
  noting('on <machine> <cover>', 'a cover was put back', (document, [cover = '']) =>
    coverNote(document, 'closed', cover),
  )
  noting('repair <machine> <repair> <option>', 'a repair was done', repairNote)
    .option('--minutes <number>', 'minutes it took')
    .option('--cost <money>', 'what it cost')
  noting('confirm <machine> <fault>', 'a fault was confirmed by eye', (_document, [fault = '']) =>
    ok({ kind: 'confirmed', fault }),
  )
  noting('seen <machine> <complaints...>', 'what was seen on the bench', (_document, seen) =>
    ok({ kind: 'seen', complaints: [...seen] as (typeof complaintIds)[number][] }),
  )
  noting('say <machine> <words...>', 'a remark', (_document, words) => ok({ kind: 'said', text: words.join(' ') }))
  noting('strike <machine> <note> [reason]', 'strike a note out', (_document, [note = '', reason = '']) =>
    ok({ kind: 'struck', note, reason }),
  )
  noting(
    'leave <machine> <exit> <received>',
    'the machine leaves: sell-working, sell-for-spares, break-for-parts, scrap',
    leftNote,
  ).option('--safety <words>', 'who made the safety checks and with what, or why it is sold without', '')
}

const minutesOr = (options: Options, otherwise: number): Result<number> => {
  const given = text(options, 'minutes')
  return given === undefined ? ok(otherwise) : quantityFromText(given, 'durationMin', '--minutes')
}

const readingNote: Maker = (document, [checkId = '', written], options) => {
  const check = blueprintById(document.state.blueprint)?.checks.find((c) => c.id === checkId)
  if (check === undefined) return ok({ kind: 'reading', check: checkId, result: { kind: 'cannot-tell' }, minutes: 0 })
  const result = written === undefined ? takenOnVirtual(document, checkId) : resultFromText(check, written)
  if (result.kind === 'refused') return result
  const minutes = minutesOr(options, check.minutes)
  if (minutes.kind === 'refused') return minutes
  return ok({
    kind: 'reading',
    check: checkId,
    result: result.value,
    minutes: minutes.value,
    instrument: text(options, 'instrument'),
  })
}

const takenOnVirtual = (document: MachineDocument, check: string): Result<ReadingResult> => {
  const job = jobOfDocument(document)
  if (job.kind === 'refused') return job
  const seed = document.state.practiceSeed
  if (seed === null)
    return refused(
      problem(
        'no-result',
        `reading of ${check}`,
        'No result was given',
        'Write what you read: 4.7, open, jumps, cannot-tell, or a grade',
      ),
    )
  return ok(virtualResult(job.value, seed, check))
}

const coverNote = (document: MachineDocument, kind: 'opened' | 'closed', cover: string): Result<NoteContentInput> => {
  const known = blueprintById(document.state.blueprint)?.covers.find((c) => c.id === cover)
  return ok({ kind, cover, minutes: (kind === 'opened' ? known?.openMin : known?.closeMin) ?? 0 })
}

const repairNote: Maker = (document, [repair = '', option = ''], options) => {
  const known = blueprintById(document.state.blueprint)
    ?.repairs.find((r) => r.id === repair)
    ?.options.find((o) => o.id === option)
  const middle = known === undefined ? 0 : Math.round((known.costMinor.low + known.costMinor.high) / 2)
  const written = text(options, 'cost')
  const costMinor = written === undefined ? middle : moneyFromText(written)
  if (costMinor === null)
    return refused(problem('not-money', '--cost', `“${written}” is not an amount of money`, 'Write such as 4.50'))
  const minutes = minutesOr(options, known?.minutes ?? 0)
  return minutes.kind === 'refused'
    ? minutes
    : ok({ kind: 'repaired', repair, option, minutes: minutes.value, costMinor })
}

const leftNote: Maker = (_document, [exit = '', received = ''], options) => {
  const receivedMinor = moneyFromText(received)
  if (receivedMinor === null)
    return refused(problem('not-money', 'received', `“${received}” is not an amount of money`, 'Write such as 45.00'))
  return ok({ kind: 'left', exit: exit as 'scrap', receivedMinor, safety: text(options, 'safety') ?? '' })
}
