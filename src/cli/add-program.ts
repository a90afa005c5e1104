import type { Command } from 'commander'
import { moneyFromText, type Currency } from '../base/money.ts'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { quantityFromText } from '../base/units.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { currentSettings } from '../bench/settings.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { complaintIds } from '../facts/complaints.ts'
import { virtualComplaints } from '../machine/index.ts'
import { atOptions } from './at-options.ts'
import { writeMachine } from './bench-commands.ts'
import { historyOf } from './history-program.ts'
import { textOf } from './option-text.ts'
import { showProblems, type Shell } from './output.ts'
import { answer, withBench, type Options } from './with-bench.ts'

/** `thrum add`: a machine comes on the bench. */
export const addMachineCommand = (program: Command, shell: Shell): void => {
  program
    .command('add')
    .description('add a machine')
    .requiredOption('--name <words>', 'what to call it')
    .requiredOption('--blueprint <id>', 'its architecture')
    .option('--model <words>', 'the model on the plate; machines of one model share their prices')
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
    .option('--make <name>', 'the make as it stands on it; goes out with open repair data alone')
    .action(
      withBench(shell, async ({ deps }, options) => {
        const { currency } = await currentSettings(deps.settings)
        const content = addedContent(options, await deps.blueprintById(textOf(options, 'blueprint') ?? ''), currency)
        if (content.kind === 'refused') return showProblems(shell.output, options.json, content.problems)
        return answer(shell, options, deps, await writeMachine(deps, content.value, atOptions(addOptions)))
      }),
    )
}

/** The options that fields of a machine that comes in are typed in. */
const addOptions = {
  name: '--name',
  model: '--model',
  make: '--make',
  'plate.voltageV': '--volts',
  'plate.powerW': '--watts',
  'plate.frequencyHz': '--hertz',
  'plate.protectionClass': '--class',
  'plate.massKg': '--mass',
  paidMinor: '--paid',
  currency: '--currency',
  hourMinor: '--hour',
  complaints: '--complaint',
  claim: '--claim',
  missing: '--missing',
  practiceSeed: '--practice',
  ageYears: '--age',
  wear: '--wear',
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
  const paidMinor = moneyFromText(textOf(options, 'paid') ?? '0')
  const hourMinor = moneyFromText(textOf(options, 'hour') ?? '0')
  const problems: Problem[] = []
  const quantity = (
    name: string,
    kind: 'voltageV' | 'powerW' | 'massKg',
    otherwise: number | undefined,
  ): number | undefined => {
    const given = textOf(options, name)
    if (given === undefined) return otherwise
    const read = quantityFromText(given, kind, `--${name}`)
    if (read.kind === 'ok') return read.value
    problems.push(...read.problems)
    return otherwise
  }
  const wholeNumber = (name: string): number | undefined => {
    const given = textOf(options, name)
    if (given === undefined || /^\d{1,10}$/.test(given)) return given === undefined ? undefined : Number(given)
    problems.push(problem('not-a-number', `--${name}`, `“${given}” is not a whole number`, 'Write such as 50'))
    return undefined
  }
  if (paidMinor === null)
    problems.push(
      problem('not-money', '--paid', `“${textOf(options, 'paid')}” is not an amount of money`, 'Write such as 4.50'),
    )
  if (hourMinor === null)
    problems.push(
      problem('not-money', '--hour', `“${textOf(options, 'hour')}” is not an amount of money`, 'Write such as 9.50'),
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
    protectionClass: (textOf(options, 'class') ?? plate?.protectionClass ?? 'II') as 'I' | 'II',
    ...(massKg === undefined ? {} : { massKg }),
  }
  const practice =
    seed === undefined || blueprint === undefined
      ? null
      : { practiceSeed: seed, complaints: [...virtualComplaints(blueprint, read, seed)] }
  return ok({
    kind: 'added',
    name: textOf(options, 'name') ?? '',
    model: textOf(options, 'model'),
    blueprint: textOf(options, 'blueprint') ?? '',
    plate: read,
    paidMinor: paidMinor ?? 0,
    currency: (textOf(options, 'currency') ?? currency) as 'GBP',
    ...(textOf(options, 'hour') === undefined || hourMinor === null ? {} : { hourMinor }),
    complaints: list(options, 'complaint') as (typeof complaintIds)[number][],
    claim: textOf(options, 'claim') ?? '',
    missing: list(options, 'missing'),
    ...(known.kind === 'ok' ? known.value : {}),
    ...practice,
  })
}
