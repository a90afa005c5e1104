import { ok, type Result } from '../../../base/result.ts'
import type { BooksTask } from '../request-schema.ts'
import { postAll } from './post.ts'
import type { Posting } from './posting.ts'
import { hourlyMinor, monthsOf, summaryOf, type BooksMonth, type BooksSummary } from './summary.ts'

export type BooksAnswer = {
  readonly postings: readonly Posting[]
  readonly summary: BooksSummary
  readonly months: readonly BooksMonth[]
  /** Profit by the hour; null where no minutes were given. */
  readonly hourlyMinor: number | null
}

/** The books of some logs. Refused where a history is impossible. */
export const books = ({ logs, minutes }: BooksTask): Result<BooksAnswer> => {
  const posted = postAll(logs)
  if (posted.kind === 'refused') return posted
  const summary = summaryOf(posted.value)
  return ok({
    postings: posted.value,
    summary,
    months: monthsOf(posted.value),
    hourlyMinor: hourlyMinor(summary.profitMinor, minutes),
  })
}
