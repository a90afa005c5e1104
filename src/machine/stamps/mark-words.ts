import { placeText, type Path } from '../../base/form/place-text.ts'
import { parse } from '../../base/parse.ts'
import { problem } from '../../base/problem.ts'
import { refused, type Result } from '../../base/result.ts'
import { markReadingSchema, type MarkReading } from './stamp.ts'

/** How each mark is written, for help and refusals. */
export const markForms = {
  'one-ring': 'one-ring LEFT RIGHT [MONTH]',
  'two-rings': 'two-rings MONTH YEAR',
  'three-rings': 'three-rings DAY MONTH [YEAR]',
  dots: 'dots YEAR DOTS',
  week: 'week YEAR WEEK',
  written: 'written YEAR [MONTH [DAY]]',
  serial: 'serial NUMBER',
  plate: 'plate [YYYY-MM-DD] [ukca] [sleeved-pins] [eu-or-uk-label]',
} as const satisfies Record<MarkReading['kind'], string>

/** Names of the numbers after each kind, in their order. */
const fields: Readonly<Record<Exclude<MarkReading['kind'], 'serial' | 'plate'>, readonly string[]>> = {
  'one-ring': ['left', 'right', 'month'],
  'two-rings': ['month', 'year'],
  'three-rings': ['day', 'month', 'year'],
  dots: ['year', 'dots'],
  week: ['year', 'week'],
  written: ['year', 'month', 'day'],
}

/** Reads a mark as a person writes it: `one-ring 0 9 4`, `written 2009 4`, `serial 0923-1134`. Refuses what it cannot be. */
export const markFromWords = (words: readonly string[]): Result<MarkReading> => {
  const [kind = '', ...rest] = words
  if (!Object.hasOwn(markForms, kind)) return refused(noSuchMark(kind))
  return parse(markReadingSchema, { kind, seen: seenOf(kind as MarkReading['kind'], rest) }, 'mark', markPlace)
}

/** What is seen is written right after the kind. */
const markPlace = ([, ...seen]: Path): string => placeText(seen)

const seenOf = (kind: MarkReading['kind'], rest: readonly string[]): Record<string, unknown> => {
  if (kind === 'serial') return { number: rest.join(' ') }
  if (kind === 'plate') return plateClues(rest)
  const names = fields[kind]
  return Object.fromEntries(rest.map((word, i) => [names[i] ?? `extra-${i}`, /^\d+$/.test(word) ? Number(word) : word]))
}

const plateClues = (words: readonly string[]): Record<string, unknown> =>
  Object.fromEntries<unknown>(
    words.map((word): [string, unknown] => {
      if (word === 'ukca') return ['ukca', true]
      if (word === 'sleeved-pins') return ['sleevedPins', true]
      return word === 'eu-or-uk-label' ? ['dryEuOrUk', true] : ['date', word]
    }),
  )

const noSuchMark = (kind: string) =>
  problem(
    'not-a-mark',
    'mark',
    `“${kind}” is no kind of date mark`,
    `Write one of: ${Object.values(markForms).join('; ')}`,
  )
