/** Days as whole numbers since 1 January 1970, so that dates compare and subtract without a time zone. */
const msPerDay = 86_400_000

export const dayOf = (year: number, month: number, day: number): number => Date.UTC(year, month - 1, day) / msPerDay

/** A day as `YYYY-MM-DD`. */
export const dayText = (day: number): string => new Date(day * msPerDay).toISOString().slice(0, 10)

/** `YYYY-MM-DD` as a day; null when there is no such day. */
export const dayFromText = (text: string): number | null => {
  const day = Date.parse(`${text}T00:00:00Z`) / msPerDay
  return Number.isInteger(day) && dayText(day) === text ? day : null
}

export const daysInMonth = (year: number, month: number): number => dayOf(year, month + 1, 1) - dayOf(year, month, 1)

export const daysInYear = (year: number): number => dayOf(year + 1, 1, 1) - dayOf(year, 1, 1)

/** The same day of the month so many months on, or the month's last day where it is shorter. */
export const addMonths = (day: number, months: number): number => {
  const date = new Date(day * msPerDay)
  const index = date.getUTCFullYear() * 12 + date.getUTCMonth() + months
  const year = Math.floor(index / 12)
  const month = index - year * 12 + 1
  return dayOf(year, month, Math.min(date.getUTCDate(), daysInMonth(year, month)))
}

/** The first of the day's month. */
export const startOfMonth = (day: number): number => dayFromText(`${dayText(day).slice(0, 7)}-01`) ?? day

/** Monday of an ISO 8601 week: week 1 is the one that holds 4 January. */
export const isoWeekMonday = (year: number, week: number): number => {
  const fourth = dayOf(year, 1, 4)
  const weekday = (new Date(fourth * msPerDay).getUTCDay() + 6) % 7
  return fourth - weekday + (week - 1) * 7
}

/** 52 or 53. */
export const isoWeeksInYear = (year: number): number => (isoWeekMonday(year + 1, 1) - isoWeekMonday(year, 1)) / 7
