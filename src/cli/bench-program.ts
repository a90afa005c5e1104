import type { Command } from 'commander'
import { problem, type Problem } from '../base/problem.ts'
import { moneyFromText, moneyText, type Currency } from '../base/money.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { quantityFromText } from '../base/units.ts'
import type { MachineDocument } from '../bench/contract.ts'
import { jobOf } from '../bench/job.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { machineList } from '../bench/queries.ts'
import { currentSettings } from '../bench/settings.ts'
import { shareOfStock } from '../bench/shelf/part-state.ts'
import { shelf } from '../bench/shelf/shelf-commands.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { complaintIds } from '../facts/complaints.ts'
import { instrumentFor, resultFromText, virtualComplaints, virtualResult } from '../machine/index.ts'
import type { ReadingResult } from '../machine/result.ts'
import { findMachine, writeMachine, writeNote } from './bench-commands.ts'
import { historyNote, historyOf, markUsage, stampNote } from './history-program.ts'
import { show, showProblems, type Shell } from './output.ts'
import { coverNote, partNote, withStepOptions } from './strip-notes.ts'
import { valueNote, valueOptions } from './value-program.ts'
import { wattsEntry } from './watts-entry.ts'
import { answer, withBench, type Options } from './with-bench.ts'

/** Commands on the machines of a bench. */
export const addBenchCommands = (program: Command, shell: Shell): void => {
  addListing(program, shell)
  addAdding(program, shell)
  addNoting(program, shell)
}

const addListing = (program: Command, shell: Shell): void => {
  program
    .command('list')
    .description('the machines on the bench: those in hand, then those that left last')
    .option('--after <place>', 'further ones that left')
    .option('--named <words>', 'only those whose name holds these words')
    .action(
      withBench(shell, async ({ deps }, options) => {
        const after = options['after'] === undefined ? undefined : Number(options['after'])
        const list = await machineList(deps, { after, text: text(options, 'named') })
        const { machines } = list
        return show(shell.output, options.json, list, () => [
          ...machines.map(
            (m) =>
              `${m.id}  ${m.name}  ${m.left === null ? 'in hand' : `left: ${m.left.exit}, profit ${moneyText(m.left.profitMinor, m.currency)}`}`,
          ),
          ...(list.after === null ? [] : [`${list.left} have left; further ones: --after ${list.after}`]),
        ])
      }),
    )
  program
    .command('show <machine>')
    .description('one machine: suspects, next move, worth, notes')
    .action(
      withBench(shell, async ({ deps, people }, options, args) => {
        const names = new Map((await people.people()).map(({ id, name }) => [id, name]))
        return answer(shell, options, deps, await findMachine(deps, args[0] ?? ''), names)
      }),
    )
}

const addAdding = (program: Command, shell: Shell): void => {
  program
    .command('add')
    .description('add a machine')
    .requiredOption('--name <words>', 'what to call it')
    .requiredOption('--blueprint <id>', 'its architecture')
    .option('--paid <money>', 'what was paid', '0')
    .option('--currency <code>', 'currency; left out, that of the settings')
    .option('--hour <money>', 'what an hour of your own time is worth; left out, that of the settings')
    .option('--complaint <ids...>', `what it is said to do: ${complaintIds.join(', ')}`)
    .option('--claim <words>', "the seller's words", '')
    .option('--missing <parts...>', 'parts that are not there')
    .option('--volts <quantity>', 'from the plate')
    .option('--watts <quantity>', 'from the plate')
    .option('--hertz <number>', 'from the plate')
    .option('--class <I|II>', 'from the plate')
    .option('--mass <quantity>', 'from the plate')
    .option('--practice <seed>', 'a virtual machine with a hidden fault')
    .option('--age <years>', 'years since it was made, where known')
    .option('--wear <use>', 'how hard it was used: light, usual, heavy')
    .action(
      withBench(shell, async ({ deps }, options) => {
        const { currency } = await currentSettings(deps.settings)
        const content = addedContent(options, await deps.blueprintById(text(options, 'blueprint') ?? ''), currency)
        if (content.kind === 'refused') return showProblems(shell.output, options.json, content.problems)
        return answer(shell, options, deps, await writeMachine(deps, content.value))
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

const addedContent = (
  options: Options,
  blueprint: Blueprint | undefined,
  currency: Currency,
): Result<NoteContentInput> => {
  const paidMinor = moneyFromText(text(options, 'paid') ?? '0')
  const hourMinor = moneyFromText(text(options, 'hour') ?? '0')
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
  if (hourMinor === null)
    problems.push(
      problem('not-money', '--hour', `“${text(options, 'hour')}” is not an amount of money`, 'Write such as 9.50'),
    )
  const plate = blueprint?.plate
  const voltageV = quantity('volts', 'voltageV', plate?.voltageV)
  const powerW = quantity('watts', 'powerW', plate?.powerW)
  const massKg = quantity('mass', 'massKg', plate?.massKg)
  const frequencyHz = wholeNumber('hertz')
  const seed = wholeNumber('practice')
  const known = historyOf(options)
  if (known.kind === 'refused') problems.push(...known.problems)
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
    currency: (text(options, 'currency') ?? currency) as 'GBP',
    ...(text(options, 'hour') === undefined || hourMinor === null ? {} : { hourMinor }),
    complaints: list(options, 'complaint') as (typeof complaintIds)[number][],
    claim: text(options, 'claim') ?? '',
    missing: list(options, 'missing'),
    ...(known.kind === 'ok' ? known.value : {}),
    ...practice,
  })
}

type Read = { readonly document: MachineDocument; readonly blueprint: Blueprint | undefined }
type Maker = (read: Read, args: readonly string[], options: Options) => Result<NoteContentInput>

const addNoting = (program: Command, shell: Shell): void => {
  const noting = (usage: string, description: string, make: Maker): Command =>
    program
      .command(usage)
      .description(description)
      .action(
        withBench(shell, async ({ deps }, options, args) => {
          const document = await findMachine(deps, args[0] ?? '')
          if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
          const blueprint = await deps.blueprintById(document.value.state.blueprint)
          const content = make({ document: document.value, blueprint }, args.slice(1), options)
          if (content.kind === 'refused') return showProblems(shell.output, options.json, content.problems)
          const note = await atItsShare(deps, content.value, options)
          return answer(shell, options, deps, await writeNote(deps, document.value, note))
        }),
      )
  noting(
    'read <machine> <check> [result]',
    'enter a reading: 4.7, 12k, open, charging (rises, then open), jumps, cannot-tell, or a grade; none on a virtual machine takes it',
    readingNote,
  )
    .option('--instrument <id>', 'the meter; left out, the budget multimeter, or the power meter for watts')
    .option('--watts <quantity>', 'what the power meter showed, for a check read in watts')
    .option('--minutes <number>', 'minutes it took')
  addStripping(noting)
  noting('repair <machine> <repair> <option>', 'a repair was done', repairNote)
    .option('--minutes <number>', 'minutes it took')
    .option('--cost <money>', 'what it cost')
    .option('--from-shelf <part>', 'the part of the shelf that went in')
  noting('confirm <machine> <fault>', 'a fault was confirmed by eye', (_document, [fault = '']) =>
    ok({ kind: 'confirmed', fault }),
  )
  noting('seen <machine> <complaints...>', 'what was seen on the bench', (_document, seen) =>
    ok({ kind: 'seen', complaints: [...seen] as (typeof complaintIds)[number][] }),
  )
  noting('described <machine> <blueprint>', 'from here on it is read by this blueprint', (_read, [blueprint = '']) =>
    ok({ kind: 'described-by', blueprint }),
  )
  noting('stamp <machine> <part> <mark...>', markUsage, (_read, args) => stampNote(args))
  noting('history <machine>', 'what came to be known of its age and use', (_read, _args, options) =>
    historyNote(options),
  )
    .option('--age <years>', 'years since it was made')
    .option('--wear <use>', 'how hard it was used: light, usual, heavy')
  Object.values(valueOptions).reduce(
    (command, [flags, words]) => command.option(flags, words),
    noting('value <machine>', 'what the plan reckons with for this machine from here on', (_read, _args, options) =>
      valueNote(options),
    ),
  )
  noting('say <machine> <words...>', 'a remark', (_document, words) => ok({ kind: 'said', text: words.join(' ') }))
  noting('strike <machine> <note> [reason]', 'strike a note out', (_document, [note = '', reason = '']) =>
    ok({ kind: 'struck', note, reason }),
  )
  noting(
    'leave <machine> <exit> <received>',
    'the machine leaves: sell-working, sell-for-spares, break-for-parts, scrap',
    leftNote,
  )
    .option('--safety <words>', 'who made the safety checks and with what, or why it is sold without', '')
    .option('--fee <money>', 'what selling it cost')
    .option('--postage <money>', 'postage that you paid')
}

const minutesOr = (options: Options, otherwise: number): Result<number> => {
  const given = text(options, 'minutes')
  return given === undefined ? ok(otherwise) : quantityFromText(given, 'durationMin', '--minutes')
}

const readingNote: Maker = (read, [checkId = '', written], options) => {
  const check = read.blueprint?.checks.find((c) => c.id === checkId)
  if (check === undefined) return ok({ kind: 'reading', check: checkId, result: { kind: 'cannot-tell' }, minutes: 0 })
  const result =
    wattsEntry(check, read.document.state.plate.powerW, written, text(options, 'watts')) ??
    (written === undefined ? takenOnVirtual(read, checkId) : resultFromText(check, written))
  if (result.kind === 'refused') return result
  const minutes = minutesOr(options, check.minutes)
  if (minutes.kind === 'refused') return minutes
  return ok({
    kind: 'reading',
    check: checkId,
    result: result.value,
    minutes: minutes.value,
    instrument: text(options, 'instrument') ?? instrumentFor(check),
  })
}

const takenOnVirtual = ({ document, blueprint }: Read, check: string): Result<ReadingResult> => {
  const seed = document.state.practiceSeed
  if (seed === null || blueprint === undefined)
    return refused(
      problem(
        'no-result',
        `reading of ${check}`,
        'No result was given',
        'Write what you read: 4.7, open, charging, jumps, cannot-tell, or a grade',
      ),
    )
  return ok(virtualResult(jobOf(document.state, document.notes, blueprint), seed, check))
}

/** Covers and parts as they come away and go back. */
const addStripping = (noting: (usage: string, description: string, make: Maker) => Command): void => {
  const cover = (name: string, also: string, description: string, kind: 'opened' | 'closed'): Command =>
    withStepOptions(
      noting(`${name} <machine> <cover>`, description, (read, [id = ''], options) =>
        coverNote(read, kind, id, options),
      ).alias(also),
    )
  const part = (name: string, description: string, kind: 'taken-out' | 'put-in'): Command =>
    withStepOptions(
      noting(`${name} <machine> <part>`, description, (read, [id = ''], options) => partNote(read, kind, id, options)),
    )
  cover('off', 'open', 'a cover was taken off', 'opened')
  cover('on', 'close', 'a cover was put back', 'closed')
  part('take-out', 'a part was taken out and laid by; it stays the machine’s', 'taken-out')
  part('put-in', 'a part was put back in', 'put-in')
}

const repairNote: Maker = ({ blueprint }, [repair = '', option = ''], options) => {
  const known = blueprint?.repairs.find((r) => r.id === repair)?.options.find((o) => o.id === option)
  const middle = known === undefined ? 0 : Math.round((known.costMinor.low + known.costMinor.high) / 2)
  const written = text(options, 'cost')
  const costMinor = written === undefined ? middle : moneyFromText(written)
  if (costMinor === null)
    return refused(problem('not-money', '--cost', `“${written}” is not an amount of money`, 'Write such as 4.50'))
  const minutes = minutesOr(options, known?.minutes ?? 0)
  return minutes.kind === 'refused'
    ? minutes
    : ok({ kind: 'repaired', repair, option, minutes: minutes.value, costMinor, ...fromShelf(options) })
}

/** A part of the shelf goes in at what it stands at, unless a cost is given. */
const atItsShare = async (
  deps: CommandDeps,
  content: NoteContentInput,
  options: Options,
): Promise<NoteContentInput> => {
  if (content.kind !== 'repaired' || content.shelfPart === undefined || options['cost'] !== undefined) return content
  const part = await shelf.document(deps, content.shelfPart)
  return part === null ? content : { ...content, costMinor: shareOfStock(part.state.costMinor, part.state.count, 1) }
}

const fromShelf = (options: Options): { readonly shelfPart?: string } => {
  const shelfPart = text(options, 'fromShelf')
  return shelfPart === undefined ? {} : { shelfPart }
}

const leftNote: Maker = (_document, [exit = '', received = ''], options) => {
  const receivedMinor = moneyFromText(received)
  if (receivedMinor === null)
    return refused(problem('not-money', 'received', `“${received}” is not an amount of money`, 'Write such as 45.00'))
  const feeMinor = moneyFromText(text(options, 'fee') ?? '0')
  const postageMinor = moneyFromText(text(options, 'postage') ?? '0')
  if (feeMinor === null || postageMinor === null)
    return refused(problem('not-money', '--fee, --postage', 'That is not an amount of money', 'Write such as 4.50'))
  return ok({
    kind: 'left',
    exit: exit as 'scrap',
    receivedMinor,
    ...(feeMinor === 0 ? {} : { feeMinor }),
    ...(postageMinor === 0 ? {} : { postageMinor }),
    safety: text(options, 'safety') ?? '',
  })
}
