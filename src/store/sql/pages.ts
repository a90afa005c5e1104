import { sql, type Kysely, type RawBuilder } from 'kysely'
import type { Page, PageAsked } from '../../bench/ports.ts'
import type { KnownSummaries } from './known-summaries.ts'
import { question, type Question } from './question.ts'
import type { Tables } from './tables.ts'

type Listed = { readonly rank: number | null; readonly summary: string | null; readonly total: number | null }

/** Which logs: those of machines, or of a kind. */
type Listing = { readonly bench: string; readonly kind: string }

type Values = Listing & {
  readonly open: 0 | 1
  readonly most: number
  readonly after: number | undefined
  readonly group: string | undefined
  readonly pattern: string | undefined
}

/** A stretch of a list, the newest first. */
export const pageOf = async (
  db: Kysely<Tables>,
  known: KnownSummaries,
  listing: Listing,
  { open, limit, after, group, text = '' }: PageAsked,
): Promise<Page<unknown>> => {
  const words = text.trim()
  const pattern = words === '' ? undefined : `%${words.replaceAll(/[\\%_]/g, (sign) => `\\${sign}`)}%`
  // One more than asked for, to know whether there are further ones.
  const values: Values = { ...listing, open: open ? 1 : 0, most: limit + 1, after, group, pattern }
  const rows = await questionFor(values)(db, values)
  return placed(rows, limit, (rank, summary) => known(listing.kind, rank, summary))
}

const questions = new Map<string, Question<Values, Listed>>()

/** Each way of narrowing a list is a question of its own. */
const questionFor = (values: Values): Question<Values, Listed> => {
  const shape = [values.kind === 'machine', ...[values.group, values.pattern, values.after].map((one) => one !== undefined)] // prettier-ignore
  const key = shape.join(' ')
  const there = questions.get(key)
  if (there !== undefined) return there
  const made = pageQuestion(values)
  questions.set(key, made)
  return made
}

/** A stretch and how many there are in all, as one statement; the number stands in a row of its own, for the stretch may be empty. */
const pageQuestion = ({ kind, group, pattern, after }: Values): Question<Values, Listed> =>
  question((put, { isLike }) => {
    const narrowed = sql`
      from ${sql.table(kind === 'machine' ? 'machine' : 'log')} where bench = ${put('bench')}
      ${kind === 'machine' ? none : sql`and kind = ${put('kind')}`} and open = ${put('open')}
      ${group === undefined ? none : sql`and group_name = ${put('group')}`}
      ${pattern === undefined ? none : sql`and ${isLike('label', put('pattern'))}`}`
    const further = after === undefined ? none : sql`and rank < ${put('after')}`
    return sql<Listed>`
      select rank, summary, null as total from (
        select rank, summary ${narrowed} ${further} order by rank desc limit ${put('most')}) as shown
      union all select null, null, total from (select count(*) as total ${narrowed}) as counted`
  })

const none: RawBuilder<unknown> = sql``

const placed = (
  rows: readonly Listed[],
  limit: number,
  read: (rank: number, summary: string) => unknown,
): Page<unknown> => {
  // Rows put together from two questions have no order that can be relied on.
  const listed = rows.filter(({ total }) => total === null).sort((a, b) => (b.rank ?? 0) - (a.rank ?? 0))
  const shown = listed.slice(0, limit)
  return {
    items: shown.flatMap(({ rank, summary }) => (rank === null || summary === null ? [] : [read(rank, summary)])),
    total: rows.find(({ total }) => total !== null)?.total ?? 0,
    after: listed.length > limit ? (shown.at(-1)?.rank ?? null) : null,
  }
}
