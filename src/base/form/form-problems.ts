import type { $ZodIssue, $ZodType } from 'zod/v4/core'
import { problem, type Problem } from '../problem.ts'
import { boundWords } from './bound-words.ts'
import { fieldWords } from './field-words.ts'
import type { Mistake, MistakeOf, Words } from './mistake.ts'
import { isOwn, ownWords } from './own-words.ts'
import { placeText, valueAt, type Path } from './place-text.ts'
import { branchMeant, schemaAt } from './schema-at.ts'
import { keyWords, missingWords, noneOf, wantedAt, wrongKindWords, wrongTextWords } from './value-words.ts'
import { unionWords } from './union-words.ts'

/** An input that was held against a schema. */
type FormInput = {
  readonly schema: $ZodType
  readonly input: unknown
  /** What the whole input is called, such as `blueprint`. */
  readonly what: string
  /** How a place is written; left out, as in `moves[2].minutes`. */
  readonly place?: ((path: Path) => string) | undefined
}

/**
 * What is wrong with the form of an input, in plain words: one problem for each mistake, with its place, and what would be right
 * by the schema there. Of several forms that a value may have, the words are about the one that was meant.
 */
export const formProblems = (form: FormInput, issues: readonly $ZodIssue[]): readonly Problem[] =>
  issues.flatMap((issue) => problemsOf(form, issue, []))

const problemsOf = (form: FormInput, issue: $ZodIssue, before: Path): readonly Problem[] => {
  const one = mistakeAt(form, issue, [...before, ...issue.path])
  const { place = placeText } = form
  const where = place(one.path)
  const say = ([what, mend]: Words): Problem => problem('not-of-the-form', where === '' ? form.what : where, what, mend)
  if (isOf(one, 'unrecognized_keys')) return one.issue.keys.map((key) => say(fieldWords(one, key)))
  if (isOf(one, 'invalid_union') && one.value !== undefined && one.schema !== null) {
    const branch = one.issue.errors[branchMeant(one.schema, one.value)]
    if (branch !== undefined && !isOwn(one.issue.message))
      return branch.flatMap((inside) => problemsOf(form, inside, one.path))
  }
  return [say(wordsOf(one))]
}

/** A place inside something that has no inside is that something: a text of an address that is read as a list. */
const mistakeAt = ({ schema, input, what }: FormInput, issue: $ZodIssue, path: Path): Mistake => {
  const end = path.findIndex((_, at) => typeof valueAt(input, path.slice(0, at)) === 'string')
  const reached = end < 0 ? path : path.slice(0, end)
  const name = reached.findLast((step) => typeof step === 'string') ?? what
  return {
    issue,
    path: reached,
    value: valueAt(input, reached),
    schema: schemaAt(schema, input, path),
    name: String(name),
  }
}

const isOf = <Code extends $ZodIssue['code']>(one: Mistake, code: Code): one is MistakeOf<Code> =>
  one.issue.code === code

const wordsOf = (one: Mistake): Words => {
  const { issue, value } = one
  if (isOf(one, 'invalid_key')) return keyWords(one)
  if (value === undefined && issue.code !== 'custom') return missingWords(one)
  if (isOf(one, 'invalid_type')) return wrongKindWords(one)
  if (isOwn(issue.message)) return ownWords(issue.message, value, wantedByOwn(one))
  if (isOf(one, 'invalid_value')) return noneOf(value, one.issue.values.map(String))
  if (isOf(one, 'invalid_union')) return unionWords(one)
  if (isOf(one, 'too_small') || isOf(one, 'too_big')) return boundWords(one)
  if (isOf(one, 'invalid_format')) return wrongTextWords(one)
  if (isOf(one, 'not_multiple_of')) return [`${String(value)} is no multiple of ${one.issue.divisor}`, 'Round it']
  return ['It cannot stand here', `Write ${wantedAt(one) ?? 'what belongs here'}`]
}

/** What would be right where a schema speaks for itself: its range or list says more than its rule, a pattern or a condition does not. */
const wantedByOwn = (one: Mistake): string | null =>
  one.issue.code === 'custom' || one.issue.code === 'invalid_format' ? null : wantedAt(one)
