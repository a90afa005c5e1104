const longestDays = 365

/** `9 days`; more than a year is not counted out. */
export const daysText = (days: number): string => {
  if (days > longestDays) return 'over a year'
  const whole = Math.max(1, Math.round(days))
  return whole === 1 ? '1 day' : `${whole} days`
}
