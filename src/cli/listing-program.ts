import type { Command } from 'commander'
import { moneyText } from '../base/money.ts'
import { machineList } from '../bench/queries.ts'
import { afterOf } from './after-option.ts'
import { findMachine } from './bench-commands.ts'
import { textOf } from './option-text.ts'
import { show, showProblems, type Shell } from './output.ts'
import { namesIn } from './who-wrote.ts'
import { answer, withBench } from './with-bench.ts'

/** `thrum list` and `thrum show`: the machines of a bench, and one of them. */
export const addListingCommands = (program: Command, shell: Shell): void => {
  program
    .command('list')
    .description('the machines on the bench: those in hand, then those that left last')
    .option('--after <place>', 'further ones that left')
    .option('--named <words>', 'only those whose name holds these words')
    .action(
      withBench(shell, async ({ deps }, options) => {
        const after = afterOf(options)
        if (after.kind === 'refused') return showProblems(shell.output, options.json, after.problems)
        const list = await machineList(deps, { after: after.value, text: textOf(options, 'named') })
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
        return answer(shell, options, deps, await findMachine(deps, args[0] ?? ''), await namesIn(people))
      }),
    )
}
