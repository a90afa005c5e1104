import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { quantityFromText } from '../base/units.ts'
import type { ReadingResult } from '../machine/result.ts'
import type { ExpectedResult } from '../machine/view.ts'

export const ohmUnits = ['Ω', 'kΩ', 'MΩ'] as const
export type OhmUnit = (typeof ohmUnits)[number]

export const digitKeys = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', 'back'] as const
export type Key = (typeof digitKeys)[number]

/** No meter shows more; longer entries are slips of the thumb. */
const mostCharacters = 8

/** The entry after one key of the keypad. A second point is passed over; a point at the start gets its zero. */
export const pressKey = (entry: string, key: Key): string => {
  if (key === 'back') return entry.slice(0, -1)
  if (entry.length >= mostCharacters) return entry
  if (key === '.') return entry.includes('.') ? entry : `${entry === '' ? '0' : entry}.`
  return entry === '0' ? key : entry + key
}

const chargingWords = /^(charging|rises,? then open)$/i
const openWords = /^(ol|o\.l\.?|open|inf|∞)$/i

/**
 * What was typed, as a reading. A unit in the text (`4.7k`) wins over the chosen one; `OL` and `open` mean no path.
 * Refuses an empty entry and whatever is no resistance.
 */
export const readingFromEntry = (entry: string, unit: OhmUnit): Result<ReadingResult> => {
  const text = entry.trim()
  if (text === '') return refused(problem('empty', 'reading', 'Nothing is entered yet', 'Type what the meter shows'))
  if (openWords.test(text)) return ok({ kind: 'open' })
  if (chargingWords.test(text)) return ok({ kind: 'charging' })
  const withUnit = /[a-zµμΩΩ]\s*$/i.test(text) ? text : `${text} ${unit}`
  const value = quantityFromText(withUnit, 'resistanceOhm', 'reading')
  return value.kind === 'ok' ? ok({ kind: 'ohms', resistanceOhm: value.value }) : value
}

/** The unit to start with: that of the first number the meter is expected to show, a sound machine's first. */
export const unitFor = (expected: readonly ExpectedResult[]): OhmUnit => {
  const soundFirst = [...expected].sort((a, b) => Number(a.suspect !== null) - Number(b.suspect !== null))
  for (const { text } of soundFirst) {
    const found = /\d\s*([kM]?)Ω/.exec(text)
    if (found !== null) return `${found[1] ?? ''}Ω` as OhmUnit
  }
  return 'Ω'
}
