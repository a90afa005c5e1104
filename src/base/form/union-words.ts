import type { MistakeOf, Words } from './mistake.ts'
import { sentence, shown } from './shown.ts'
import { noneOf, wantedAt } from './value-words.ts'

/** A value that looks like none of the forms it may have, or like several. */
export const unionWords = (one: MistakeOf<'invalid_union'>): Words => {
  const { issue, value } = one
  const kinds = 'options' in issue && issue.options !== undefined ? issue.options.map(String) : []
  if (kinds.length > 0) return noneOf(value, kinds)
  const words = issue.errors.flatMap(([first]) =>
    first?.code === 'invalid_value' && first.path.length === 0 && typeof first.values[0] === typeof value
      ? first.values
      : [],
  )
  if (words.length > 1) return noneOf(value, words.map(String))
  const isObject = typeof value === 'object' && value !== null && !Array.isArray(value)
  const what = isObject ? 'It has none of the forms it may have' : `${sentence(shown(value))} cannot stand here`
  return [what, `Write ${wantedAt(one) ?? 'one of its forms'}`]
}
