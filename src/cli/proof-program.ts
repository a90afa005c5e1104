import type { Command } from 'commander'
import { writeFile } from 'node:fs/promises'
import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { quantityFromText, type Quantity } from '../base/units.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { MachineDocument } from '../bench/contract.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { safetyRecordOf } from '../bench/safety-record.ts'
import { currentSettings } from '../bench/settings.ts'
import { unknownId } from '../bench/unknown.ts'
import { recallCheckId } from '../facts/recall-check.ts'
import { safetyStepIds } from '../facts/safety-steps.ts'
import { regions, type Region } from '../facts/regions.ts'
import { leadChoice, limitQuantities, profilesOf, proofView } from '../machine/index.ts'
import { safetyLabelPdf } from '../report/safety-label-pdf.ts'
import { safetyRecordPdf } from '../report/safety-record-pdf.ts'
import { findMachine, writeNote } from './bench-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { leadLines, proofLines } from './proof-text.ts'
import { answerWith, withBench, type Options } from './with-bench.ts'

/** Commands on whether a machine is safe to sell: what is proved, one more finding, the rules, a lead, the record. */
export const addProofCommands = (program: Command, shell: Shell): void => {
  addProof(program, shell)
  addRules(program, shell)
  addProve(program, shell)
  addLead(program, shell)
  addRecord(program, shell)
}

const addProof = (program: Command, shell: Shell): void => {
  program
    .command('proof <machine>')
    .description('is it safe to sell: the checks after repair, what they prove, what is open')
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '']) =>
        proofAnswer(shell, options, deps, await findMachine(deps, wanted)),
      ),
    )
}

const addRules = (program: Command, shell: Shell): void => {
  program
    .command('rules <machine>')
    .description('by which rules it is proved from here on, and the lead it has')
    .option('--region <region>', `${regions.join(', ')}; left out, that of the settings`)
    .option('--edition <id>', 'edition of the rules; left out, the usual one of the region')
    .option('--lead <length>', 'length of its lead, such as 8m')
    .option('--size <size>', 'conductor of its lead, such as 0.75mm2 or 18AWG')
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '']) => {
        const document = await findMachine(deps, wanted)
        if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
        const note = await rulesNote(deps, options)
        if (note.kind === 'refused') return showProblems(shell.output, options.json, note.problems)
        return proofAnswer(shell, options, deps, await writeNote(deps, document.value, note.value))
      }),
    )
}

const text = (options: Options, name: string): string | undefined => {
  const value = options[name]
  return typeof value === 'string' ? value : undefined
}

const regionFrom = (given: string, where: string): Result<Region> =>
  (regions as readonly string[]).includes(given)
    ? ok(given as Region)
    : refused(unknownId('region', where, given, regions))

const rulesNote = async (deps: CommandDeps, options: Options): Promise<Result<NoteContentInput>> => {
  const region = regionFrom(text(options, 'region') ?? (await currentSettings(deps.settings)).region, '--region')
  if (region.kind === 'refused') return region
  const profile = text(options, 'edition') ?? profilesOf(region.value)[0].id
  const [size, written] = [text(options, 'size'), text(options, 'lead')]
  const rules = { region: region.value, profile }
  if (size === undefined && written === undefined) return ok({ kind: 'rules', rules })
  if (size === undefined || written === undefined) return refused(halfALead)
  const lengthM = quantityFromText(written, 'lengthM', '--lead')
  return lengthM.kind === 'refused' ? lengthM : ok({ kind: 'rules', rules, lead: { size, lengthM: lengthM.value } })
}

const halfALead = problem(
  'half-a-lead',
  '--lead',
  'A lead has a length and a size',
  'Give both, such as --lead 8m --size 0.75mm2',
)

const addProve = (program: Command, shell: Shell): void => {
  program
    .command('prove <machine> <what> <found> [words...]')
    .description(
      `enter what a check after repair found: ${safetyStepIds.join(', ')} with good or bad; ${recallCheckId} with good (in no list) or bad; or ${limitQuantities.join(', ')} with what was shown, such as 0.12ohm, ">200Mohm", beyond`,
    )
    .option('--with <instrument>', 'the instrument that showed it')
    .option('--at <part>', 'where it was taken, such as "motor housing"')
    .option('--volts <voltage>', 'test voltage that was set')
    .option('--checked <day>', 'when the instrument was last checked, such as 2026-03-14')
    .option('--minutes <number>', 'minutes it took')
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '', what = '', found = '', ...words]) => {
        const document = await findMachine(deps, wanted)
        if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
        const note = findingNote(what, found, words.join(' '), options)
        if (note.kind === 'refused') return showProblems(shell.output, options.json, note.problems)
        return proofAnswer(shell, options, deps, await writeNote(deps, document.value, note.value))
      }),
    )
}

const looks = [...safetyStepIds, recallCheckId] as const

const findingNote = (what: string, found: string, words: string, options: Options): Result<NoteContentInput> => {
  const minutes = quantityFromText(text(options, 'minutes') ?? '0', 'durationMin', '--minutes')
  if (minutes.kind === 'refused') return minutes
  const isQuantity = (limitQuantities as readonly string[]).includes(what)
  // “insulation” and “earth-continuity” are checks and quantities: a figure means the quantity.
  if (isQuantity && found !== 'good' && found !== 'bad') return readingNote(what, found, minutes.value, options)
  const step = looks.find((id) => id === what)
  if (step === undefined) return refused(unknownId('check after repair', 'what', what, [...looks, ...limitQuantities]))
  if (found !== 'good' && found !== 'bad')
    return refused(problem('good-or-bad', 'found', `“${found}” is neither good nor bad`, 'Write good or bad'))
  const finding = { kind: 'look' as const, step, good: found === 'good', text: words }
  return ok({ kind: 'proof', finding, minutes: minutes.value })
}

const unitKinds: Readonly<Record<string, Quantity>> = {
  'earth-continuity': 'resistanceOhm',
  insulation: 'resistanceOhm',
  'plug-pin-voltage': 'voltageV',
}

const readingNote = (quantity: string, found: string, minutes: number, options: Options): Result<NoteContentInput> => {
  const instrument = text(options, 'with')
  if (instrument === undefined) return refused(noInstrument)
  const volts = text(options, 'volts')
  const testVoltageV = volts === undefined ? ok(null) : quantityFromText(volts, 'voltageV', '--volts')
  if (testVoltageV.kind === 'refused') return testVoltageV
  const shown = found.startsWith('>') || found === 'beyond' ? 'above' : found.startsWith('<') ? 'below' : 'figure'
  const digits = found.replace(/^[<>]\s*/, '')
  const value = found === 'beyond' ? ok(null) : quantityFromText(digits, unitKinds[quantity] ?? 'currentA', 'found')
  if (value.kind === 'refused') return value
  return ok({
    kind: 'proof',
    minutes,
    finding: {
      kind: 'reading',
      quantity: quantity as (typeof limitQuantities)[number],
      ...(text(options, 'at') === undefined ? {} : { part: text(options, 'at') }),
      shown,
      value: value.value,
      testVoltageV: testVoltageV.value,
      instrument,
      checkedOn: text(options, 'checked') ?? '',
    },
  })
}

const noInstrument = problem(
  'no-instrument',
  '--with',
  'A reading proves something only with its instrument',
  'Add --with and one of the instruments that thrum proof names',
)

const addLead = (program: Command, shell: Shell): void => {
  program
    .command('lead <machine> <length>')
    .description('a replacement lead by its plate: conductor, cord, plug, fuse, colours, each with its clause')
    .option('--region <region>', `${regions.join(', ')}; left out, that of the settings`)
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '', written = '']) => {
        const document = await findMachine(deps, wanted)
        if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
        const usual = document.value.state.rules?.region ?? (await currentSettings(deps.settings)).region
        const region = regionFrom(text(options, 'region') ?? usual, '--region')
        const lengthM = quantityFromText(written, 'lengthM', 'length')
        const choice =
          region.kind === 'refused'
            ? region
            : lengthM.kind === 'refused'
              ? lengthM
              : leadChoice(document.value.state.plate, region.value, lengthM.value)
        if (choice.kind === 'refused') return showProblems(shell.output, options.json, choice.problems)
        return show(shell.output, options.json, choice.value, () => leadLines(choice.value))
      }),
    )
}

const addRecord = (program: Command, shell: Shell): void => {
  program
    .command('record <machine> <file>')
    .description('write the safety record as PDF')
    .option('--label <file>', 'write a small label with it')
    .option('--address <address>', 'what the code on the label leads to', '')
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '', file = '']) => {
        return answerWith(shell, options, deps, await findMachine(deps, wanted), async (job, document) => {
          const record = safetyRecordOf(document, job, await currentSettings(deps.settings))
          const label = text(options, 'label')
          const files = [{ path: file, bytes: await safetyRecordPdf(record) }]
          if (label !== undefined)
            files.push({ path: label, bytes: await safetyLabelPdf(record, labelAddress(options, document)) })
          for (const { path, bytes } of files) {
            const written = await writeBytes(path, bytes)
            if (written.kind === 'refused') return showProblems(shell.output, options.json, written.problems)
          }
          const paths = files.map(({ path }) => path)
          return show(shell.output, options.json, { record, files: paths }, () => [
            `${record.verdict.title}. Written: ${paths.join(', ')}`,
          ])
        })
      }),
    )
}

const labelAddress = (options: Options, { state }: MachineDocument): string => {
  const given = text(options, 'address') ?? ''
  return given === '' ? `thrum:${state.id}` : given
}

const writeBytes = async (path: string, bytes: Uint8Array): Promise<Result<null>> => {
  try {
    await writeFile(path, bytes)
    return ok(null)
  } catch (error) {
    const what = `This file cannot be written (${(error as Error).message})`
    return refused(problem('cannot-write', path, what, 'Name a file in a folder that is there'))
  }
}

/** Shows what is proved of a machine, or why it was refused. */
const proofAnswer = async (
  shell: Shell,
  options: Options,
  deps: CommandDeps,
  document: Result<MachineDocument>,
): Promise<number> =>
  answerWith(shell, options, deps, document, async (job, { state }) => {
    const view = proofView(job, (await currentSettings(deps.settings)).region)
    return show(shell.output, options.json, view, () => proofLines(state.name, view))
  })
