import type { Command } from 'commander'
import { moneyText, type Currency } from '../base/money.ts'
import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { branchesOf, onwardAfter, possibleResults, stopRules, undertakingOf } from '../machine/index.ts'
import type { Branch, Leaf } from '../machine/branches.ts'
import type { Job } from '../machine/job.ts'
import type { Undertaking } from '../machine/undertaking.ts'
import type { MachineView, MoveView } from '../machine/view.ts'
import { findMachine, jobOfDocument } from './bench-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { withBench } from './with-bench.ts'

/** `thrum then`: what each result of a move would lead to, and when to stop. */
export const addThenCommand = (program: Command, shell: Shell): void => {
  program
    .command('then <machine> [move]')
    .description('what each result of the next move, or of another check or repair:option, would lead to')
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '', move]) => {
        const document = await findMachine(deps, wanted)
        if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
        const job = await jobOfDocument(deps, document.value)
        if (job.kind === 'refused') return showProblems(shell.output, options.json, job.problems)
        const chosen = chosenMove(shell.viewOf(job.value), move)
        if (chosen.kind === 'refused') return showProblems(shell.output, options.json, chosen.problems)
        const unfolded = unfold(job.value, chosen.value, document.value.state.currency)
        return show(shell.output, options.json, unfolded, () => linesOf(unfolded, document.value.state.currency))
      }),
    )
}

type Chosen = { readonly name: string; readonly move: Undertaking }

const chosenMove = (view: MachineView, wanted: string | undefined): Result<Chosen> => {
  const moves: readonly MoveView[] = [view.next, ...view.others]
  const found = wanted === undefined ? view.next : moves.find((move) => move.id === wanted)
  if (found === undefined)
    return refused(
      problem('not-a-move', 'move', `“${wanted}” cannot be done now`, 'Write the id of a check, or repair:option'),
    )
  const move = undertakingOf(found)
  return move === null
    ? refused(
        problem(
          'nothing-follows',
          'move',
          `“${found.name}” is an exit: nothing follows it`,
          'Name a check or a repair',
        ),
      )
    : ok({ name: found.name, move })
}

type Unfolded = Chosen & {
  readonly results: readonly Leaf[]
  readonly lessLikely: number
  readonly stopRules: readonly string[]
}

const unfold = (job: Job, { name, move }: Chosen, currency: Currency): Unfolded => {
  const { results, lessLikely } = possibleResults(job, move)
  const leaves = results.map((result) => ({
    result,
    onward: onwardAfter(job, [{ move, result: result.result }]),
    failure: null,
  }))
  return { name, move, results: leaves, lessLikely, stopRules: stopRules(leaves, lessLikely, currency) }
}

const linesOf = (unfolded: Unfolded, currency: Currency): readonly string[] => [
  unfolded.name,
  ...branchesOf(unfolded.results).map((branch) => branchLine(branch, currency)),
  ...(unfolded.lessLikely > 0 ? [`${percent(unfolded.lessLikely)}  less likely results`] : []),
  ...unfolded.stopRules,
]

const branchLine = ({ probability, text, name, expectedMinor }: Branch, currency: Currency): string =>
  `${percent(probability)}  ${text} → ${name}, ${moneyText(expectedMinor ?? 0, currency)}`

const percent = (p: number): string => `${(p * 100).toFixed(1).padStart(5)} %`
