import type { Command } from 'commander'
import { airQuantityFromText } from '../base/air-units.ts'
import { ok, refused, type Result } from '../base/result.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { MachineDocument } from '../bench/contract.ts'
import { airView } from '../machine/index.ts'
import { airLines } from './air-text.ts'
import { findMachine, writeNote } from './bench-commands.ts'
import { gaugeNote, gaugeOptions } from './gauge-entry.ts'
import { show, showProblems, type Shell } from './output.ts'
import { answerWith, withBench, type Options } from './with-bench.ts'

/** Commands on a machine's air: `thrum air` tells what the gauge readings say, `thrum gauge` enters one. */
export const addAirCommands = (program: Command, shell: Shell): void => {
  program
    .command('air <machine>')
    .description('how it breathes: what the gauge readings say, the next reading, before and after')
    .option(...holesOption)
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '']) =>
        airAnswer(shell, options, deps, await findMachine(deps, wanted)),
      ),
    )
  const gauge = program
    .command('gauge <machine> [reading]')
    .description(
      'enter a gauge reading of the air with its unit: 78inH2O, 19.4kPa, 35L/s, 610Hz; none on a virtual machine takes it',
    )
    .option(...holesOption)
  Object.values(gaugeOptions)
    .reduce((command, [flags, words]) => command.option(flags, words), gauge)
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '', written]) => {
        const document = await findMachine(deps, wanted)
        if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
        const blueprint = await deps.blueprintById(document.value.state.blueprint)
        const note = gaugeNote(document.value, blueprint, written, options)
        if (note.kind === 'refused') return showProblems(shell.output, options.json, note.problems)
        return airAnswer(shell, options, deps, await writeNote(deps, document.value, note.value))
      }),
    )
}

const holesOption = [
  '--holes <diameters...>',
  'holes of your own rig, such as 13mm 19mm; left out, the usual rig’s',
] as const

/** Shows what is known of a machine's air, or why it was refused. */
const airAnswer = async (
  shell: Shell,
  options: Options,
  deps: CommandDeps,
  document: Result<MachineDocument>,
): Promise<number> =>
  answerWith(shell, options, deps, document, (job, { state }) => {
    const holes = holesOf(options)
    const view = holes.kind === 'ok' ? airView(job, holes.value) : holes
    return view.kind === 'refused'
      ? showProblems(shell.output, options.json, view.problems)
      : show(shell.output, options.json, view.value, () => airLines(state.name, view.value))
  })

const holesOf = (options: Options): Result<readonly number[] | undefined> => {
  const written = options['holes']
  if (!Array.isArray(written)) return ok(undefined)
  const read = written.map((one) => airQuantityFromText(one, 'lengthM', '--holes'))
  const problems = read.flatMap((one) => (one.kind === 'refused' ? one.problems : []))
  return problems.length > 0 ? refused(...problems) : ok(read.flatMap((one) => (one.kind === 'ok' ? [one.value] : [])))
}
