import { inSentence } from '../base/in-sentence.ts'
import { resistanceText } from '../base/units.ts'
import type { Check } from '../blueprint/schema.ts'
import type { ReadingResult } from '../machine/result.ts'
import { wattsText } from '../machine/scale.ts'
import type { ExitId } from '../machine/view.ts'

/** A result in plain words: `open`, `4.7 Ω`, `jumps when moved`, a grade's name. An unknown grade reads as its id. */
export const resultText = (result: ReadingResult, check: Check | undefined): string => {
  switch (result.kind) {
    case 'ohms':
      return resistanceText(result.resistanceOhm)
    case 'open':
      return 'open'
    case 'charging':
      return 'rises, then open'
    case 'jumps':
      return 'jumps when moved'
    case 'cannot-tell':
      return 'could not tell'
    case 'grade': {
      const outcomes = check === undefined || check.kind === 'meter' ? [] : check.outcomes
      const name = outcomes.find((outcome) => outcome.id === result.outcome)?.name ?? result.outcome
      return result.watts === undefined ? name : `${wattsText(result.watts)}, ${inSentence(name)}`
    }
  }
}

/** What became of a machine, as `sold working`. */
export const exitText: Readonly<Record<ExitId, string>> = {
  'sell-working': 'sold working',
  'sell-for-spares': 'sold for spares or repair',
  'break-for-parts': 'broken for parts',
  scrap: 'scrapped',
}

/** Minutes as `12 min` or `0.5 min`. */
export const minutesText = (minutes: number): string => `${Number(minutes.toFixed(1))} min`

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

/** `2026-03-14T10:02:00Z` as `14 March 2026` (in UTC). */
export const dayText = (at: string): string => {
  const [year = '', month = '', day = ''] = at.slice(0, 10).split('-')
  return `${Number(day)} ${months[Number(month) - 1] ?? month} ${year}`
}

/** `a`, `a and b`, `a, b and c`. */
export const listText = (items: readonly string[]): string =>
  items.length <= 1 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`
