import { problem, type Problem } from '../../../base/problem.ts'
import { ok, refused, type Result } from '../../../base/result.ts'
import type { ExpenseEvent, Log } from './events.ts'
import { postMachine } from './machine-book.ts'
import { amountProblems, moved, type Posting } from './posting.ts'
import { postShelfPart } from './shelf-book.ts'

/**
 * The lines of one log, in order; those of each event add up to nothing. Logs are posted each by itself: the books are the
 * lines of all of them, in whatever order.
 * @returns refused, naming the note, where the history is impossible
 */
export const post = (log: Log): Result<readonly Posting[]> => {
  switch (log.kind) {
    case 'machine':
      return postMachine(log.events)
    case 'part':
      return postShelfPart(log.part, log.events)
    case 'expenses':
      return postExpenses(log.events)
  }
}

/** The lines of money spent on no machine in particular. Refused where an amount is not whole. */
export const postExpenses = (events: readonly ExpenseEvent[]): Result<readonly Posting[]> => {
  const wrong = events.flatMap(amountProblems)
  if (wrong.length > 0) return refused(...wrong)
  return ok(events.flatMap((event) => moved(event, 'cash', 'expenses', event.minor)))
}

/** The lines of several logs. Refused with the problems of all of them; also where one part leaves the shelf with more than it came with. */
export const postAll = (logs: readonly Log[]): Result<readonly Posting[]> => {
  const posted = logs.map(post)
  const wrong = posted.flatMap((one) => (one.kind === 'refused' ? one.problems : []))
  const lines = posted.flatMap((one) => (one.kind === 'ok' ? one.value : []))
  const problems = [...wrong, ...shelfProblems(lines)]
  return problems.length > 0 ? refused(...problems) : ok(lines)
}

/** Logs that do not fit each other: a machine took in a part at more than the shelf ever had of it. */
const shelfProblems = (lines: readonly Posting[]): readonly Problem[] => {
  const left = new Map<string, number>()
  for (const { account, part, minor } of lines) {
    if (account === 'shelf' && part !== undefined) left.set(part, (left.get(part) ?? 0) + minor)
  }
  return [...left].flatMap(([part, minor]) => (minor < 0 ? [leftWithMore(part, -minor)] : []))
}

const leftWithMore = (part: string, minor: number): Problem =>
  problem(
    'left-with-more',
    part,
    `The part “${part}” left the shelf with ${minor} minor units more than it came with`,
    'Give the same cost where it came and where it went',
  )
