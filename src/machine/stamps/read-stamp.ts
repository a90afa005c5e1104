import { problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { dayOf, dayText, daysInMonth, isoWeekMonday, isoWeeksInYear } from './calendar.ts'
import type { Stamp } from './stamp.ts'

/** Days that a stamp may mean, first and last; the weights of one stamp's candidates sum to one. */
export type DateCandidate = {
  readonly from: number
  readonly to: number
  readonly weight: number
  readonly why: string
}
/** The years a machine can be from, and the last day that is not in the future. */
export type Years = { readonly earliest: number; readonly latest: number; readonly today: number }

type Reading = { readonly month?: number | undefined; readonly share: number; readonly why: string }
type Guess = Omit<DateCandidate, 'weight'> & { readonly share: number }

/**
 * Every date that a stamp may mean, likeliest first. Weights are ranks by judgement, not measured frequencies.
 * Refuses a stamp that can mean no day from the earliest year to today.
 */
export const readStamp = (stamp: Stamp, years: Years, where: string): Result<readonly DateCandidate[]> => {
  const possible = yearsOf(stamp, years)
  if (possible.length === 0) {
    const what = `No year from ${years.earliest} to ${years.latest} agrees with this stamp`
    return refused(problem('year-out-of-range', where, what, 'Look again, or give an earlier earliestYear'))
  }
  const real = possible.flatMap((year) => guessesIn(stamp, year))
  if (real.length === 0) {
    return refused(
      problem('no-such-date', where, 'There is no such day or week in that year', 'Look at the stamp again'),
    )
  }
  const past = real.filter((guess) => guess.from <= years.today)
  if (past.length === 0) {
    const what = `This stamp is later than today, ${dayText(years.today)}`
    return refused(problem('in-the-future', where, what, 'Look again, or mend today’s date'))
  }
  const total = past.reduce((sum, guess) => sum + guess.share, 0)
  const candidates = past.map(({ share, ...guess }) => ({ ...guess, weight: share / total }))
  return ok(candidates.sort((a, b) => b.weight - a.weight || b.from - a.from))
}

/** Whole years that a year as seen can be: two digits stand for each year of the range that ends in them. */
const yearsOf = (stamp: Stamp, years: Years): readonly number[] => {
  const all = Array.from({ length: Math.max(0, years.latest - years.earliest + 1) }, (_, i) => years.earliest + i)
  const fits = (year: number, seen: number): boolean => (seen < 100 ? year % 100 === seen : year === seen)
  if (stamp.kind === 'one-ring') return all.filter((year) => fits(year, stamp.seen.left * 10 + stamp.seen.right))
  const { year: seen } = stamp.seen
  if (seen !== undefined) return all.filter((year) => fits(year, seen))
  const ring = stamp.kind === 'three-rings' ? stamp.seen.yearsOnRing : undefined
  return ring === undefined ? all : all.filter((year) => ring.some((one) => fits(year, one)))
}

const guessesIn = (stamp: Stamp, year: number): readonly Guess[] => {
  switch (stamp.kind) {
    case 'one-ring':
      return oneRingMonths(stamp.seen).map((reading) => inMonth(year, reading))
    case 'two-rings':
      return [inMonth(year, { month: stamp.seen.month, share: 1, why: 'month and year rings' })]
    case 'dots':
      return [inMonth(year, { month: stamp.seen.dots, share: 1, why: 'last dot' })]
    case 'week': {
      if (stamp.seen.week > isoWeeksInYear(year)) return []
      const monday = isoWeekMonday(year, stamp.seen.week)
      return [{ from: monday, to: monday + 6, share: 1, why: 'week of the year' }]
    }
    case 'three-rings': {
      const { day } = stamp.seen
      return onDay(
        year,
        stamp.seen.month,
        typeof day === 'number' ? day : day.tens * 10 + day.units,
        'month and day rings',
      )
    }
    case 'written': {
      const { month, day } = stamp.seen
      if (month !== undefined && day !== undefined) return onDay(year, month, day, 'as written')
      return [inMonth(year, { month, share: 1, why: 'as written' })]
    }
  }
}

/** Public readings disagree whether the month is the numeral pointed at or the missing one: both are kept. */
const oneRingMonths = ({ month, coveredMonth }: Extract<Stamp, { kind: 'one-ring' }>['seen']): readonly Reading[] => {
  const readings: Reading[] = []
  if (month !== undefined) readings.push({ month, share: 0.6, why: 'month pointed at' })
  if (coveredMonth !== undefined && coveredMonth !== month) {
    readings.push({ month: coveredMonth, share: 0.4, why: 'numeral that is missing' })
  }
  return readings.length === 0 ? [{ share: 1, why: 'year only' }] : readings
}

const inMonth = (year: number, { month, share, why }: Reading): Guess => ({
  from: dayOf(year, month ?? 1, 1),
  to: dayOf(year, month ?? 12, daysInMonth(year, month ?? 12)),
  share,
  why,
})

const onDay = (year: number, month: number, day: number, why: string): readonly Guess[] => {
  if (day < 1 || day > daysInMonth(year, month)) return []
  const at = dayOf(year, month, day)
  return [{ from: at, to: at, share: 1, why }]
}
