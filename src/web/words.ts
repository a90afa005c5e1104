import { complaints, type Complaint } from '../facts/complaints.ts'
import type { ExitId } from '../machine/view.ts'

/** A probability for reading aloud: `38 %`, `under 1 %`, `over 99 %`. */
export const percentText = (probability: number): string => {
  if (probability > 0 && probability < 0.01) return 'under 1 %'
  if (probability < 1 && probability > 0.99) return 'over 99 %'
  return `${Math.round(probability * 100)} %`
}

/** `loses money 8 % of the time`; of a move that cannot, `never loses money`. */
export const lossText = (probability: number): string =>
  probability === 0 ? 'never loses money' : `loses money ${percentText(probability)} of the time`

/** Minutes as a bench would say them: `under 1 min`, `4 min`, `1 h 20 min`. */
export const minutesText = (minutes: number): string => {
  if (minutes > 0 && minutes < 1) return 'under 1 min'
  const whole = Math.round(minutes)
  if (whole < 60) return `${whole} min`
  const rest = whole % 60
  return rest === 0 ? `${whole / 60} h` : `${(whole - rest) / 60} h ${rest} min`
}

/** Complaints in words, without what stands behind the colon. */
export const complaintsText = (ids: readonly Complaint[]): string => {
  const words = ids.map((id) => complaints[id].replace(/:.*$/, ''))
  const sentence = words.map((word, at) => (at === 0 ? word : word.charAt(0).toLowerCase() + word.slice(1)))
  return sentence.length === 0 ? 'No complaint noted' : sentence.join(', ')
}

export const exitNames: Readonly<
  Record<ExitId, { readonly future: string; readonly short: string; readonly past: string }>
> = {
  'sell-working': { future: 'Sell working', short: 'working', past: 'Sold working' },
  'sell-for-spares': { future: 'Sell for spares or repair', short: 'spares', past: 'Sold for spares or repair' },
  'break-for-parts': { future: 'Break for parts', short: 'parts', past: 'Broken for parts' },
  scrap: { future: 'Scrap', short: 'scrap', past: 'Scrapped' },
}

/** A text with one full stop at its end, whether or not its author wrote one. */
export const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`)

/** A text with its first letter large. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** The day of a note, in the reader's own zone. */
export const dayText = (iso: string): string =>
  new Date(iso).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' })

/** The day and time of a note, in the reader's own zone. */
export const momentText = (iso: string): string =>
  new Date(iso).toLocaleString('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' })

/** A Bayes factor as a bench would say it: `3.2 times likelier`, `8 times less likely`. */
export const factorText = (factor: number): string => {
  const times = factor >= 1 ? factor : 1 / factor
  const size = times >= 100 ? 'over 100' : times >= 10 ? times.toFixed(0) : times.toFixed(1)
  return `${size} times ${factor >= 1 ? 'likelier' : 'less likely'}`
}
