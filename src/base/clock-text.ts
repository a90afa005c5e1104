const dayMs = 24 * 60 * 60 * 1000

/**
 * A moment near now as it is said: `17:40`, `17:40 tomorrow`, `17:40 yesterday`, `17:40 on Sat 28 Nov`.
 * @param moment ISO 8601
 * @param now ISO 8601
 * @param timeZone such as `Europe/London`; left out, the reader's own
 */
export const clockText = (moment: string, now: string, timeZone?: string): string => {
  const zone = timeZone === undefined ? {} : { timeZone }
  const [at, then] = [new Date(moment), new Date(now)]
  const time = new Intl.DateTimeFormat('en-GB', { ...zone, hour: '2-digit', minute: '2-digit' }).format(at)
  const days = dayNumber(at, zone) - dayNumber(then, zone)
  if (days === 0) return time
  if (days === 1) return `${time} tomorrow`
  if (days === -1) return `${time} yesterday`
  const day = new Intl.DateTimeFormat('en-GB', { ...zone, weekday: 'short', day: 'numeric', month: 'short' }).format(at)
  return `${time} on ${day.replace(',', '')}`
}

/** Days of the calendar, counted, so that a day of 23 or 25 hours is one. */
const dayNumber = (date: Date, zone: { readonly timeZone?: string }): number => {
  const parts = new Intl.DateTimeFormat('en-GB', {
    ...zone,
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
  }).formatToParts(date)
  const of = (type: 'year' | 'month' | 'day'): number => Number(parts.find((part) => part.type === type)?.value)
  return Date.UTC(of('year'), of('month') - 1, of('day')) / dayMs
}

/** When something is dry, as it is said: `dry at 17:40 tomorrow`; once its time is up, `should be dry since 17:40: feel it`. */
export const dryText = (readyAt: string, now: string, timeZone?: string): string => {
  const at = clockText(readyAt, now, timeZone)
  return Date.parse(readyAt) <= Date.parse(now) ? `should be dry since ${at}: feel it` : `dry at ${at}`
}
