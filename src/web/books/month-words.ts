/** `2026-03` → `March 2026`, or `Mar 2026`. */
export const monthText = (month: string, length: 'long' | 'short' = 'long'): string =>
  new Date(`${month}-15T12:00:00Z`).toLocaleDateString('en-GB', { month: length, year: 'numeric', timeZone: 'UTC' })

/** `2026-03-14` → `14 Mar 2026`; a day of the calendar, the same in every zone. */
export const calendarDay = (day: string): string =>
  new Date(`${day}T12:00:00Z`).toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    timeZone: 'UTC',
  })
