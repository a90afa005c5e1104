/** Pairs of what is written and what stands in its place, applied in order; the first letter's case is kept. */
export type Wording = readonly (readonly [string, string])[]

const textKeys = new Set([
  'name',
  'summary',
  'recognise',
  'does',
  'how',
  'danger',
  'caution',
  'hint',
  'note',
  'forbidden',
])

/** The same blueprint or piece of one in the words of another country's trade. Ids stay as they are. */
export const reword = <T>(value: T, wording: Wording): T =>
  wording.length === 0 ? value : (walk(value, wording, false) as T)

const walk = (value: unknown, wording: Wording, isText: boolean): unknown => {
  if (typeof value === 'string') return isText ? replaced(value, wording) : value
  if (Array.isArray(value)) return value.map((item) => walk(item, wording, isText))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, walk(inner, wording, textKeys.has(key))]))
}

const replaced = (text: string, wording: Wording): string =>
  wording.reduce((sofar, [from, to]) => {
    // Most texts hold none of the words; to look for them plainly is far quicker than by their expression.
    if (!sofar.toLowerCase().includes(from.toLowerCase())) return sofar
    return sofar.replaceAll(wholeWord(from), (found) => withCaseOf(found, to))
  }, text)

const wholeWords = new Map<string, RegExp>()

const wholeWord = (from: string): RegExp => {
  const known = wholeWords.get(from) ?? new RegExp(`(?<![\\p{L}-])${from}(?![\\p{L}])`, 'giu')
  wholeWords.set(from, known)
  return known
}

const withCaseOf = (found: string, to: string): string =>
  found[0] === found[0]?.toUpperCase() ? to.charAt(0).toUpperCase() + to.slice(1) : to
