import { sql, type Kysely } from 'kysely'
import { problem, type Problem } from '../../base/problem.ts'
import type { Tables } from '../sql/tables.ts'

type Sum = { readonly key: string; readonly minor: number | string; readonly milliminutes: number | string }

/** The sums by month, which the database keeps up by itself, against the lines they are the sums of. */
export const monthProblems = async (db: Kysely<Tables>): Promise<readonly Problem[]> => {
  const problems: Problem[] = []
  for (const [kind, column] of monthKinds) {
    const kept = await keptSums(db, kind)
    const fresh = await freshSums(db, column)
    for (const key of new Set([...kept.keys(), ...fresh.keys()])) {
      if (kept.get(key) !== fresh.get(key)) problems.push(staleMonth(key))
    }
  }
  return problems
}

const monthKinds = [
  ['calendar', 'month'],
  ['from-6th', 'month_from_6th'],
] as const

const keptSums = async (db: Kysely<Tables>, kind: string): Promise<ReadonlyMap<string, string>> => {
  const { rows } = await sql<Sum>`
    select bench || ' ' || month || ' ' || currency || ' ' || account as key, minor, milliminutes
    from book_month where month_kind = ${kind}`.execute(db)
  return sums(rows)
}

const freshSums = async (db: Kysely<Tables>, column: string): Promise<ReadonlyMap<string, string>> => {
  const { rows } = await sql<Sum>`
    select bench || ' ' || ${sql.ref(column)} || ' ' || currency || ' ' || account as key, sum(minor) as minor,
      sum(round(1000 * minutes)) as milliminutes
    from book_line group by bench, ${sql.ref(column)}, currency, account`.execute(db)
  return sums(rows)
}

const sums = (rows: readonly Sum[]): ReadonlyMap<string, string> =>
  new Map(rows.map(({ key, minor, milliminutes }) => [key, `${Number(minor)} ${Number(milliminutes)}`]))

const staleMonth = (key: string): Problem =>
  problem(
    'stale-list',
    `month ${key}`,
    'The sum kept of this month is not the sum of its lines',
    '“thrum verify --mend” makes it again from the notes',
  )
