import type { Command } from 'commander'
import { runStamps, type StampsAnswer } from '../machine/index.ts'
import { readJson } from './engine-commands.ts'
import { show, showProblems, type Shell } from './output.ts'

/** `thrum stamps FILE`: when the machine was put together, from the date stamps of its parts. */
export const addStampsCommand = (program: Command, shell: Shell): void => {
  program
    .command('stamps <file>')
    .description('date stamps of the parts to a build window: JSON in (a file, or - for standard input)')
    .action((file: string, _options: unknown, command: Command) => {
      const { json } = command.optsWithGlobals<{ json: boolean }>()
      const input = readJson(file)
      const answer = input.kind === 'ok' ? runStamps(input.value) : input
      shell.finish(
        answer.kind === 'ok'
          ? show(shell.output, json, answer.value, () => stampsText(answer.value))
          : showProblems(shell.output, json, answer.problems),
      )
    })
}

const dates = (span: { readonly from: string; readonly to: string }): string =>
  span.from === span.to ? span.from : `${span.from} to ${span.to}`

const stampsText = (answer: StampsAnswer): readonly string[] => [
  `Put together: ${dates(answer.window)}`,
  ...answer.parts.map((one) => `${one.part}: ${one.candidates.map(dates).join(' or ')} (${one.verdict})`),
  ...answer.serial.map((one) => `Serial number read as ${one.form}: ${dates(one)}`),
  ...answer.remarks.map((remark) => `${remark}.`),
]
