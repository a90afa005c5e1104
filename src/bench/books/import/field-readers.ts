import { moneyFromText } from '../../../base/money.ts'
import { problem, type Problem } from '../../../base/problem.ts'
import { ok, refused, type Result } from '../../../base/result.ts'
import { quantityFromText } from '../../../base/units.ts'
import type { Region } from '../../../facts/regions.ts'

/** `row 5, paid` */
export const placeOf = (row: number, column: string): string => `row ${row}, ${column}`

/** An amount of money, minor units. */
export const readMoney = (text: string, where: string): Result<number> => {
  const minor = moneyFromText(text)
  if (minor !== null) return ok(minor)
  return refused(
    problem('not-money', where, text === '' ? 'No amount is given' : `“${text}” is not an amount of money`, moneyMend),
  )
}
const moneyMend = 'Write it like 12.50, without spaces or commas between thousands; 0 for nothing'

/** Minutes; hours where it says so. */
export const readMinutes = (text: string, where: string): Result<number> => quantityFromText(text, 'durationMin', where)

/** Where the month is written before the day. */
const monthFirst: readonly Region[] = ['US']
/** Where both are in use, so that only `2026-03-14` is clear. */
const either: readonly Region[] = ['CA']

/**
 * A day: `2026-03-14`, or `14/03/2026` (with `.` or `-` too), in the United States `03/14/2026`.
 * @returns `2026-03-14`; refused where there is no such day, and outside the years 1900 to 2999
 */
export const readDay = (text: string, region: Region, where: string): Result<string> => {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text)
  const local = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/.exec(text)
  const day = iso === null ? localDay(local, region) : dayText(iso[1], iso[2], iso[3])
  if (day !== null && isDay(day)) return hasLikelyYear(day) ? ok(day) : refused(notALikelyYear(text, where))
  return refused(notADay(text, where))
}

const localDay = (match: RegExpExecArray | null, region: Region): string | null => {
  if (match === null || either.includes(region)) return null
  const [, first, second, year] = match
  return monthFirst.includes(region) ? dayText(year, first, second) : dayText(year, second, first)
}

const dayText = (year = '', month = '', day = ''): string => `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`

const isDay = (day: string): boolean => {
  const at = new Date(`${day}T00:00:00Z`)
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(day)
}

/** Wide enough for anything that was ever bought with a plug on it; a slip in the year stands out. */
const hasLikelyYear = (day: string): boolean => day >= '1900-01-01' && day <= '2999-12-31'

const notALikelyYear = (text: string, where: string): Problem =>
  problem('not-a-likely-year', where, `“${text}” is not in the years 1900 to 2999`, 'Write the year in four figures')

const notADay = (text: string, where: string): Problem =>
  problem('not-a-day', where, text === '' ? 'No day is given' : `“${text}” is not a day`, 'Write it like 2026-03-14')

/** One of several by its id or its name, whatever the case. */
export const readChoice = <Id extends string>(
  text: string,
  names: readonly (readonly [Id, string])[],
  where: string,
): Result<Id> => {
  const wanted = text.trim().toLowerCase()
  const found = names.find(([id, name]) => id.toLowerCase() === wanted || name.toLowerCase() === wanted)
  if (found !== undefined) return ok(found[0])
  const what = text === '' ? 'Nothing is given' : `“${text}” is not known here`
  return refused(problem('not-known', where, what, `Write one of ${names.map(([id]) => id).join(', ')}`))
}
