import { problem, type Problem } from '../../base/problem.ts'
import type { EntryOf } from './entry.ts'

/** What stands against striking out an entry, whatever the kind of log: it is there, is no strike, and stands yet. */
export const strikeProblems = (
  entries: readonly EntryOf<{ readonly kind: string }>[],
  note: string,
): readonly Problem[] => {
  const entry = entries.find((one) => one.id === note)
  if (entry === undefined) {
    return [problem('unknown-note', 'note', `“${note}” is not an entry of this log`, 'Name an entry of it')]
  }
  if (entry.content.kind === 'struck') return [noStrikeOfStrike]
  return entries.some(({ content }) => 'note' in content && content.kind === 'struck' && content.note === note)
    ? [struckAlready]
    : []
}

const noStrikeOfStrike = problem(
  'cannot-strike',
  'note',
  'A strike cannot itself be struck out',
  'Enter again what was struck out',
)
const struckAlready = problem('already-struck', 'note', 'This entry is struck out already', 'Nothing is left to do')
