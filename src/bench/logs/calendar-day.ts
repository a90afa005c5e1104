/** The day of a moment, in UTC: `2026-03-14T10:02:00Z` → `2026-03-14`. */
export const dayOf = (at: string): string => at.slice(0, 10)

const dayMs = 24 * 60 * 60 * 1000

/** A day so many days earlier. */
export const daysBefore = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) - days * dayMs).toISOString().slice(0, 10)

/** `2026-03-14` → `2026-03` */
export const monthOf = (day: string): string => day.slice(0, 7)

/** The month from the 6th to the 5th that a day lies in, named by the month it begins in: tax months of the United Kingdom run so. */
export const monthFrom6th = (day: string): string => monthOf(daysBefore(day, 5))
