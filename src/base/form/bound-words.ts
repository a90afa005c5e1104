import type { MistakeOf, Words } from './mistake.ts'
import { sentence, shown } from './shown.ts'
import { wantedAt } from './value-words.ts'

type Bound = MistakeOf<'too_small'> | MistakeOf<'too_big'>

/** A number out of its range, a text or list that is too short or too long. */
export const boundWords = (one: Bound): Words => {
  const { issue } = one
  if (issue.origin === 'string') return textWords(one)
  return issue.origin === 'array' ? listWords(one) : numberWords(one)
}

const limitOf = ({ issue }: Bound): number => Number(issue.code === 'too_small' ? issue.minimum : issue.maximum)

const numberWords = (one: Bound): Words => {
  const { issue, value } = one
  const isInside = issue.inclusive ?? true
  const side =
    issue.code === 'too_small' ? (isInside ? 'less than' : 'not above') : isInside ? 'more than' : 'not below'
  return [`${sentence(shown(value))} is ${side} ${limitOf(one)}`, `Write ${wantedAt(one) ?? 'a number in its range'}`]
}

const textWords = (one: Bound): Words => {
  const limit = limitOf(one)
  const length = String(one.value).trim().length
  if (one.issue.code === 'too_big')
    return [`The text is ${length} characters long`, `Write it shorter: at most ${limit} characters`]
  if (limit === 1) return ['The text is empty', `Write ${(wantedAt(one) ?? 'it').replace(' in quotes', '')}`]
  return [`The text is ${length} characters long`, `Write it longer: at least ${limit} characters`]
}

const listWords = (one: Bound): Words => {
  const limit = limitOf(one)
  const count = Array.isArray(one.value) ? one.value.length : 0
  if (one.issue.code === 'too_big') return [`The list has ${count} entries`, `Write at most ${limit}`]
  const what = count === 0 ? 'The list is empty' : `The list has ${count} ${count === 1 ? 'entry' : 'entries'}`
  return [what, `Write at least ${limit === 1 ? 'one' : limit}`]
}
