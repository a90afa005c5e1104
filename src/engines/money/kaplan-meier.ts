/** Time until something ended: by the event, or only that it had not happened by then (censored). */
export type Stay = { readonly days: number; readonly isEvent: boolean }

export type SurvivalStep = {
  readonly days: number
  readonly atRisk: number
  readonly events: number
  /** Share that is still there after this day, 0..1. */
  readonly survival: number
  /** Its standard error by Greenwood's formula; 0 where nothing is left. */
  readonly standardError: number
}

/** Product-limit estimate of Kaplan and Meier (1958), one step for each time with an event. Who is censored at that time still counts as at risk. */
export const kaplanMeier = (stays: readonly Stay[]): readonly SurvivalStep[] => {
  const times = [...new Set(stays.filter(({ isEvent }) => isEvent).map(({ days }) => days))].sort((a, b) => a - b)
  let survival = 1
  let greenwood = 0
  return times.map((days) => {
    const atRisk = stays.filter((one) => one.days >= days).length
    const events = stays.filter((one) => one.isEvent && one.days === days).length
    survival *= 1 - events / atRisk
    greenwood += atRisk === events ? 0 : events / (atRisk * (atRisk - events))
    return { days, atRisk, events, survival, standardError: survival * Math.sqrt(greenwood) }
  })
}

/** First time by which at least half had the event; null when it never comes to that. */
export const medianStay = (steps: readonly SurvivalStep[]): number | null =>
  steps.find(({ survival }) => survival <= 0.5 + 1e-12)?.days ?? null
