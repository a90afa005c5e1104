import { nearest } from '../nearest.ts'
import type { Mistake, MistakeOf, Words } from './mistake.ts'
import { isOwn, ownWords } from './own-words.ts'
import { sentence, shown } from './shown.ts'
import { wantedText } from './wanted-text.ts'

const kinds: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  array: 'a list',
  tuple: 'a list',
  object: 'an object',
  record: 'an object',
  boolean: 'true or false',
}

/** What would be right at the place of a mistake, to follow “Write”. */
export const wantedAt = ({ schema, name }: Mistake): string | null =>
  schema === null ? null : wantedText(schema, name)

/** Nothing stands where something must. */
export const missingWords = (one: Mistake): Words => [
  one.path.length === 0 ? `There is no ${one.name}` : `“${one.name}” is missing`,
  `Write it: ${kindsIn(one) ?? wantedAt(one) ?? 'see its form'}`,
]

/** The kinds that a field may say, where it says which of several forms is meant. */
const kindsIn = ({ issue }: Mistake): string | null =>
  issue.code === 'invalid_union' && 'options' in issue && issue.options !== undefined
    ? `one of ${issue.options.join(', ')}`
    : null

/** A name that must not stand among those of an object that takes many. */
export const keyWords = ({ issue, path }: MistakeOf<'invalid_key'>): Words => {
  const key = String(path.at(-1))
  const [inside] = issue.issues
  if (inside?.code === 'invalid_value') return noneOf(key, inside.values.map(String))
  if (inside !== undefined && isOwn(inside.message)) return ownWords(inside.message, key, null)
  return [`${shown(key)} cannot be a name here`, 'Write another, or take it out']
}

/** A value of another kind than is wanted. */
export const wrongKindWords = (one: MistakeOf<'invalid_type'>): Words => {
  const { value, issue } = one
  const kind = kinds[issue.expected] ?? issue.expected
  const wanted = wantedAt(one) ?? kind
  // Only a whole number tells a kind from another by words that say more than the kind.
  if (issue.expected === 'int' && isOwn(issue.message)) return ownWords(issue.message, value, wanted)
  const isNumber = issue.expected === 'number' || issue.expected === 'int'
  if (isNumber && typeof value === 'string' && value.trim() !== '' && Number.isFinite(Number(value)))
    return [`"${value}" is a text, because of its quotes`, `Write ${wanted}, without quotes`]
  return [Number.isNaN(value) ? `It is not ${kind}` : `${sentence(shown(value))} is not ${kind}`, `Write ${wanted}`]
}

/** A value that is none of those on a list; the one it nearly is, is meant. */
export const noneOf = (value: unknown, options: readonly string[]): Words => {
  const text = typeof value === 'string' ? shown(value) : sentence(shown(value))
  if (options.length === 1) return [`${text} is not “${options[0]}”`, `Write “${options[0]}”`]
  const meant = typeof value === 'string' ? nearest(value, options) : null
  return [`${text} is none of ${options.join(', ')}`, meant === null ? 'Use one of these' : `Write “${meant}”`]
}

/** A text of the wrong form, such as a day. */
export const wrongTextWords = (one: MistakeOf<'invalid_format'>): Words => {
  const { value, issue } = one
  const text = shown(value)
  const wanted = `Write ${wantedAt(one) ?? 'it in that form'}`
  if (issue.format === 'date' && /^\d{4}-\d{2}-\d{2}$/.test(String(value)))
    return [`${text} is no day of the calendar`, wanted]
  if (issue.format === 'date') return [`${text} is not a day`, wanted]
  if (issue.format === 'datetime') return [`${text} is not a time in UTC`, wanted]
  return [`${text} is not of the right form`, `Write it in the form ${issue.pattern ?? issue.format}`]
}
