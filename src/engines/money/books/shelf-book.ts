import { problem, type Problem } from '../../../base/problem.ts'
import { ok, refused, type Result } from '../../../base/result.ts'
import type { ShelfEvent } from './events.ts'
import { tooMuchTaken } from './machine-book.ts'
import { amountProblems, moved, saleLines, type Posting } from './posting.ts'

/** What the lot stands at; null once all of it is gone, or before it came. */
type Stock = number | null
type Step = { readonly after: Stock; readonly lines: readonly Posting[] }

/**
 * The lines of one lot's log, in order; those of each event add up to nothing. What comes from a machine or goes into one
 * changes what the lot stands at, and its lines are in the machine's log.
 * @param part the lot's id, written beside its lines
 * @returns refused, naming the note, where the history is impossible
 */
export const postShelfPart = (part: string, events: readonly ShelfEvent[]): Result<readonly Posting[]> => {
  let stock: Stock = null
  const lines: Posting[] = []
  for (const event of events) {
    const step = next(part, stock, event)
    if (step.kind === 'refused') return step
    stock = step.value.after
    lines.push(...step.value.lines)
  }
  return ok(lines)
}

const next = (part: string, stock: Stock, event: ShelfEvent): Result<Step> => {
  const wrong = amountProblems(event)
  if (wrong.length > 0) return refused(...wrong)
  switch (event.kind) {
    case 'bought':
      return ok({ after: (stock ?? 0) + event.minor, lines: moved(event, 'cash', 'shelf', event.minor, part) })
    case 'found':
      return ok({ after: stock ?? 0, lines: [] })
    case 'from-machine':
      return ok({ after: (stock ?? 0) + event.minor, lines: [] })
    case 'to-machine':
      return taken(stock, event, event.minor, () => [])
    case 'sold':
      return taken(stock, event, event.costMinor, (costMinor) => saleLines(event, 'shelf', costMinor, part))
    case 'written-off':
      return taken(stock, event, event.costMinor, (costMinor) => moved(event, 'shelf', 'written-off', costMinor, part))
  }
}

/** Some of the lot goes, or all of it where no cost is named. */
const taken = (
  stock: Stock,
  event: ShelfEvent,
  costMinor: number | undefined,
  linesOf: (costMinor: number) => readonly Posting[],
): Result<Step> => {
  if (stock === null) return refused(notThere(event))
  const goesMinor = costMinor ?? stock
  if (goesMinor > stock) return refused(tooMuchTaken(event, goesMinor, stock))
  return ok({ after: costMinor === undefined ? null : stock - goesMinor, lines: linesOf(goesMinor) })
}

const notThere = ({ note }: ShelfEvent): Problem =>
  problem('not-there', note, 'Nothing of this part is on the shelf', 'Enter how it came there first')
