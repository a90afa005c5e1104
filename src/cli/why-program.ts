import type { Command } from 'commander'
import { moneyText, type Currency } from '../base/money.ts'
import { basisText, type MoneySum } from '../base/money-sum.ts'
import { problem } from '../base/problem.ts'
import type { MachineView } from '../machine/view.ts'
import { findMachine, jobOfDocument } from './bench-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { withBench } from './with-bench.ts'

/** `thrum why`: a money figure of a machine line by line, with what each line rests on. */
export const addWhyCommand = (program: Command, shell: Shell): void => {
  program
    .command('why <machine> [figure]')
    .description(
      'what a figure rests on: as-it-stands, carry-on, repaired, an exit, or a check or repair:option against the best',
    )
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '', figure = 'carry-on']) => {
        const document = await findMachine(deps, wanted)
        if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
        const job = await jobOfDocument(deps, document.value)
        if (job.kind === 'refused') return showProblems(shell.output, options.json, job.problems)
        const sum = sumOf(shell.viewOf(job.value), figure)
        if (sum === null) return showProblems(shell.output, options.json, [noFigure(figure)])
        return show(shell.output, options.json, sum, () => sumLines(sum, document.value.state.currency))
      }),
    )
}

const noFigure = (figure: string) =>
  problem(
    'no-such-figure',
    'figure',
    `There is no figure “${figure}” of this machine now`,
    'Name as-it-stands, carry-on, repaired, an exit such as break-for-parts, or a move that can be made now',
  )

const sumOf = ({ worth, exits, next, others }: MachineView, figure: string): MoneySum | null => {
  const exitOf = (id: string): MoneySum | null => exits.find((exit) => exit.id === id)?.sum ?? null
  switch (figure) {
    case 'as-it-stands':
      return exitOf(worth.bestExit)
    case 'carry-on':
      return next.sum
    case 'repaired':
      return worth.repairedSum
    default:
      return exitOf(figure) ?? others.find(({ id }) => id === figure)?.lessSum ?? null
  }
}

const sumLines = (sum: MoneySum, currency: Currency): readonly string[] => {
  const width = Math.max(...[sum, ...sum.lines].map(({ minor }) => moneyText(minor, currency).length))
  const amount = (minor: number): string => moneyText(minor, currency).padStart(width)
  return [
    ...sum.lines.map(({ name, minor, basis, sources }) => {
      const how = basisText(basis, currency)
      return `${amount(minor)}  ${name}${how === '' ? '' : `: ${how}`}${sources.map((at) => ` [${at + 1}]`).join('')}`
    }),
    `${amount(sum.minor)}  ${sum.name}`,
    '',
    ...sum.sources.map((source, at) => `[${at + 1}] ${source}`),
  ]
}
