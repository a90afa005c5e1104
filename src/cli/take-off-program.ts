import type { Command } from 'commander'
import { placeText } from '../base/form/place-text.ts'
import { parse } from '../base/parse.ts'
import type { Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { MachineDocument } from '../bench/contract.ts'
import { takeOff, takeOffSchema } from '../bench/shelf/take-off.ts'
import { partConditions } from '../bench/shelf/part-note.ts'
import { typedNumber } from './at-options.ts'
import { findMachine } from './bench-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { specOf } from './spec-options.ts'
import { withBench, type Options } from './with-bench.ts'

/** `thrum take-off`: parts off a machine and onto the shelf; with `--break` the rest leaves as broken for parts. */
export const addTakeOffCommand = (program: Command, shell: Shell): void => {
  program
    .command('take-off <machine> <parts...>')
    .description('take parts off a machine and put them on the shelf, each with its share of the cost')
    .option('--break', 'the machine is broken for parts: they take the whole cost')
    .option('--condition <how>', partConditions.join(', '))
    .option('--place <words>', 'where they lie')
    .option('--spec <measure=value...>', 'measures of a single part, such as powerW=1200')
    .option('--minutes <number>', 'minutes for each')
    .action(
      withBench(shell, async ({ deps }, options, [machine = '', ...parts]) => {
        const done = await taken(deps, options, machine, parts)
        if (done.kind === 'refused') return showProblems(shell.output, options.json, done.problems)
        return show(shell.output, options.json, done.value, () => [
          `${done.value.state.name}, version ${done.value.state.version}: ${parts.length} on the shelf`,
          ...done.value.notes.flatMap(({ content }) =>
            content.kind === 'took-off' && parts.includes(content.part)
              ? [`  ${content.part}  (${content.shelfPart})`]
              : [],
          ),
        ])
      }),
    )
}

/** The options that fields of each part are typed in. */
const takeOffOptions: Readonly<Record<string, string>> = {
  spec: '--spec',
  condition: '--condition',
  place: '--place',
  minutes: '--minutes',
}

const taken = async (
  deps: CommandDeps,
  options: Options,
  machine: string,
  parts: readonly string[],
): Promise<Result<MachineDocument>> => {
  const [found, spec] = [await findMachine(deps, machine), specOf(options)]
  if (found.kind === 'refused') return found
  if (spec.kind === 'refused') return spec
  const one = { spec: spec.value, condition: options['condition'], place: options['place'] }
  const minutes = options['minutes'] === undefined ? undefined : typedNumber(options['minutes'])
  const asked = parse(
    takeOffSchema,
    {
      version: found.value.state.version,
      taken: parts.map((part) => ({ part, ...one, minutes })),
      ...(options['break'] === undefined ? {} : { breaks: {} }),
    },
    'take-off',
    (path) => takeOffOptions[String(path[2])] ?? placeText(path),
  )
  if (asked.kind === 'refused') return asked
  const outcome = await takeOff(deps, found.value.state.id, asked.value)
  return outcome.kind === 'done' ? ok(outcome.document) : refused(...(outcome.problems as readonly [Problem]))
}
