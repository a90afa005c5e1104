import { dayOf, daysInMonth, daysInYear, isoWeekMonday, isoWeeksInYear } from './calendar.ts'
import type { Years } from './read-stamp.ts'

export type SerialDate = { readonly form: 'MMYY' | 'YYWW' | 'YYDDD'; readonly from: number; readonly to: number }

/** Every date that the first digits of a serial number may mean, nearest to the window first. No rule is universal. */
export const serialDates = (
  serial: string,
  years: Years,
  window: { from: number; to: number },
): readonly SerialDate[] => {
  const digits = /^\d{4,}/.exec(serial.replace(/[\s-]/g, ''))?.[0] ?? ''
  if (digits === '') return []
  const first = Number(digits.slice(0, 2))
  const second = Number(digits.slice(2, 4))
  const third = digits.length >= 5 ? Number(digits.slice(2, 5)) : 0
  const found: SerialDate[] = []
  for (let year = years.earliest; year <= years.latest; year += 1) {
    if (year % 100 === second && first >= 1 && first <= 12) {
      found.push({ form: 'MMYY', from: dayOf(year, first, 1), to: dayOf(year, first, daysInMonth(year, first)) })
    }
    if (year % 100 !== first) continue
    if (second >= 1 && second <= isoWeeksInYear(year)) {
      const monday = isoWeekMonday(year, second)
      found.push({ form: 'YYWW', from: monday, to: monday + 6 })
    }
    if (third >= 1 && third <= daysInYear(year)) {
      const day = dayOf(year, 1, third)
      found.push({ form: 'YYDDD', from: day, to: day })
    }
  }
  const away = (date: SerialDate): number => Math.max(0, window.from - date.to, date.from - window.to)
  return found.filter((date) => date.from <= years.today).sort((a, b) => away(a) - away(b) || a.from - b.from)
}
