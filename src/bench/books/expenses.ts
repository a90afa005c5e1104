import { problem } from '../../base/problem.ts'
import type { EntryOf } from '../logs/entry.ts'
import { logCommands } from '../logs/log-commands.ts'
import { standingEntries } from '../logs/standing-entries.ts'
import { strikeProblems } from '../logs/strike-problems.ts'
import { expenseContentSchema, type ExpenseContent } from './expense-note.ts'

type Spent = Extract<ExpenseContent, { kind: 'spent' }>

/** Money spent on no machine in particular, with its id and whether it was struck out. */
export type ExpenseState = Spent & { readonly id: string; readonly at: string; readonly struck: boolean }

const foldExpense = (entries: readonly EntryOf<ExpenseContent>[]): ExpenseState => {
  const first = entries.find(({ content }) => content.kind === 'spent')
  if (first?.content.kind !== 'spent') throw new Error('the log of an expense has no first entry')
  return { ...first.content, id: first.log, at: first.at, struck: standingEntries(entries).length === 0 }
}

/** What the bench spends on no machine in particular. */
export const expenses = logCommands<ExpenseContent, ExpenseState>({
  kind: 'expense',
  name: 'expense',
  schema: expenseContentSchema,
  problems: (entries, content) => {
    if (content.kind === 'struck') return strikeProblems(entries, content.note)
    return entries.length === 0 ? [] : [enteredAlready]
  },
  fold: foldExpense,
})

const enteredAlready = problem('entered-already', 'kind', 'This is entered already', 'Enter another one under a new id')
