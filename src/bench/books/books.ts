import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { taxYearOf, type TaxYear } from '../../facts/tax-years.ts'
import type { Region } from '../../facts/regions.ts'
import type { CommandDeps } from '../commands.ts'
import { dayOf } from '../logs/calendar-day.ts'
import { currentSettings } from '../settings.ts'
import { booksView, type BooksView } from './books-view.ts'
import { monthKindOf } from './tax-year-books.ts'

/**
 * The books of a bench.
 * @param year the tax year that margins are shown for, such as `2026/27` or `2026-27`; the present one when left out
 * @returns refused where the year is not written so
 */
export const booksOf = async (deps: CommandDeps, year?: string): Promise<Result<BooksView>> => {
  const { region, currency } = await currentSettings(deps.settings)
  const today = dayOf(deps.now())
  const chosen = year === undefined ? ok(taxYearOf(region, today)) : taxYearNamed(region, year)
  if (chosen.kind === 'refused') return chosen
  const { books, bench } = deps
  const kind = monthKindOf(region)
  const [months, yearMonths, traffic, yearTraffic, blueprint, complaint, source, sold] = await Promise.all([
    books.months(bench, 'calendar'),
    books.months(bench, kind),
    books.traffic(bench, 'calendar'),
    books.traffic(bench, kind),
    books.results(bench, 'blueprint'),
    books.results(bench, 'complaint'),
    books.results(bench, 'source'),
    books.sold(bench, chosen.value.from, chosen.value.to),
  ])
  const blueprintNames = await namesOf(
    deps,
    blueprint.map(({ key }) => key),
  )
  const results = { blueprint, complaint, source }
  const seen = { today, region, currency, months, yearMonths, traffic, yearTraffic, results, sold, blueprintNames }
  return ok(booksView({ ...seen, year: chosen.value.name }))
}

const namesOf = async (
  { blueprintById }: CommandDeps,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> => {
  const known = await Promise.all([...new Set(ids)].map(async (id) => [id, (await blueprintById(id))?.name] as const))
  return new Map(known.flatMap(([id, name]) => (name === undefined ? [] : [[id, name] as const])))
}

/** The tax year of a name, `2026/27`, `2026-27` or `2026`. */
export const taxYearNamed = (region: Region, name: string): Result<TaxYear> => {
  const match = /^(\d{4})(?:[/-]\d{2})?$/.exec(name.trim())
  // Late in the year that it begins in, whatever day that is.
  const year = match === null ? null : taxYearOf(region, `${match[1]}-12-31`)
  if (year === null || (name.includes('/') || name.includes('-')) !== year.name.includes('/'))
    return refused(noYear(region, name))
  return year.name === name.trim().replace('-', '/') ? ok(year) : refused(noYear(region, name))
}

const noYear = (region: Region, name: string): Problem =>
  problem(
    'no-tax-year',
    'year',
    `“${name}” is not a tax year of the region in the settings`,
    `Write it like ${taxYearOf(region, '2026-12-31').name}`,
  )
