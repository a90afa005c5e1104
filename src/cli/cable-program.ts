import type { Command } from 'commander'
import { problem } from '../base/problem.ts'
import { refused, type Result } from '../base/result.ts'
import { cableCopper, type CopperAnswer } from '../machine/index.ts'
import { show, showProblems, type Shell } from './output.ts'

type Options = {
  readonly json: boolean
  readonly size: string
  readonly length: string
  readonly with: string
  readonly temperature: string
  readonly thereAndBack?: boolean
  readonly plug?: boolean
}

/** `thrum cable`: whether a salvaged cable's copper is what it claims, from its resistance. */
export const addCableCommand = (program: Command, shell: Shell): void => {
  program
    .command('cable <resistance>')
    .description(
      'is a salvaged cable’s copper what it claims: one conductor from end to end, plug out, such as 0.42ohm',
    )
    .requiredOption('--size <size>', 'what it claims, such as 0.75mm2 or 18AWG')
    .requiredOption('--length <length>', 'its length, such as 8m')
    .option('--with <instrument>', 'the meter', 'budget-multimeter')
    .option('--temperature <celsius>', 'temperature of the cable, such as 12', '20')
    .option('--there-and-back', 'two conductors, joined at the far end')
    .option('--plug', 'read through a plug, terminals or a reel')
    .action((resistance: string, _given: unknown, command: Command) => {
      const { json, ...options } = command.optsWithGlobals<Options>()
      const answer = verdictOn(resistance, options)
      shell.finish(
        answer.kind === 'refused'
          ? showProblems(shell.output, json, answer.problems)
          : show(shell.output, json, answer.value, () => cableLines(answer.value)),
      )
    })
}

const verdictOn = (resistance: string, options: Omit<Options, 'json'>): Result<CopperAnswer> => {
  const temperatureC = Number(options.temperature)
  if (options.temperature.trim() === '' || !Number.isFinite(temperatureC)) {
    const what = `“${options.temperature}” is not a temperature`
    return refused(problem('not-a-temperature', '--temperature', what, 'Write degrees Celsius, such as 12'))
  }
  return cableCopper({
    size: options.size,
    length: options.length,
    resistance,
    instrument: options.with,
    conductors: options.thereAndBack === true ? 2 : 1,
    temperatureC,
    hasContacts: options.plug === true,
  })
}

const cableLines = ({ sentence, judgement, couldBe }: CopperAnswer): readonly string[] => [
  sentence,
  judgement.sentence,
  ...(couldBe.length === 0 ? [] : [`Sound copper of these sizes could read this: ${couldBe.join(', ')}`]),
]
