import type { ZodError } from 'zod'
import { problem, type Problem } from '../base/problem.ts'
import { nearest } from './nearest.ts'

type Issue = ZodError['issues'][number]
type Path = readonly PropertyKey[]

/** What is wrong with the form of a blueprint, in plain words, one problem for each mistake; lists by id in the places. */
export const formProblems = (input: unknown, issues: readonly Issue[]): readonly Problem[] =>
  issues.flatMap((issue) => problemsOf(input, issue, issues))

const formProblem = (input: unknown, path: Path, what: string, mend: string): Problem =>
  problem('not-of-the-form', placeText(input, path), what, mend)

/** `checks.pins-on.red` for the path `checks.0.red`, where the first check has an id. */
const placeText = (input: unknown, path: Path): string => {
  const names = path.map((key, at) => {
    const item = typeof key === 'number' ? valueAt(input, path.slice(0, at + 1)) : undefined
    const id = typeof item === 'object' && item !== null && 'id' in item ? item.id : undefined
    return typeof id === 'string' && id !== '' ? id : String(key)
  })
  return names.length === 0 ? 'blueprint' : names.join('.')
}

const valueAt = (input: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    input,
  )

const problemsOf = (input: unknown, issue: Issue, issues: readonly Issue[]): readonly Problem[] => {
  const { path } = issue
  const one = (what: string, mend: string): readonly Problem[] => [formProblem(input, path, what, mend)]
  switch (issue.code) {
    case 'invalid_type':
      return one(...wrongKind(valueAt(input, path), path, issue.expected))
    case 'unrecognized_keys':
      return issue.keys.map((key) => noField(input, path, key, issues))
    case 'invalid_value':
      return one(...noneOf(valueAt(input, path), issue.values.map(String)))
    case 'invalid_union':
      return one(...noForm(input, issue))
    case 'too_small':
      return one(...bounded(issue, 'at least', Number(issue.minimum)))
    case 'too_big':
      return one(...bounded(issue, 'at most', Number(issue.maximum)))
    default:
      return one(issue.message.replace(/\.$/, ''), seeGuide)
  }
}

const seeGuide = 'See its line in the guide to blueprints'

const kinds: Readonly<Record<string, string>> = {
  string: 'a text in quotes',
  number: 'a number',
  array: 'a list in [ ]',
  tuple: 'a list in [ ]',
  object: 'an object in { }',
  record: 'an object in { }',
  boolean: 'true or false',
}

type Words = readonly [what: string, mend: string]

const wrongKind = (value: unknown, path: Path, expected: string): Words => {
  const kind = kinds[expected] ?? expected
  if (value === undefined) return [`“${String(path.at(-1) ?? 'blueprint')}” is missing`, `Write it: ${kind}`]
  return [`It is not ${kind}`, `Write ${kind}`]
}

/** A field that is not known; when one with nearly its name is missing beside it, that one is meant. */
const noField = (input: unknown, path: Path, key: string, issues: readonly Issue[]): Problem => {
  const missing = issues
    .filter((issue) => issue.code === 'invalid_type' && issue.path.length === path.length + 1)
    .filter((issue) => issue.path.every((step, at) => at === path.length || step === path[at]))
    .map((issue) => String(issue.path.at(-1)))
  const meant = nearest(key, missing)
  const mend = meant === null ? `Take it out; the fields are in the guide to blueprints` : `Write “${meant}”`
  return formProblem(input, path, `There is no field “${key}” here`, mend)
}

const noneOf = (value: unknown, options: readonly string[]): Words => {
  const written = typeof value === 'string' ? value : JSON.stringify(value)
  if (written === undefined) return ['It is missing', `Write one of ${options.join(', ')}`]
  const meant = nearest(written, options)
  return [`“${written}” is none of ${options.join(', ')}`, meant === null ? 'Use one of these' : `Write “${meant}”`]
}

/** The choices of a field that may have several forms, where the form itself does not say them. */
const forms: Readonly<Record<string, string>> = {
  becomes: '"open", "short", {"ohm": …}, {"plusOhm": …} or {"timesOhm": …}',
  power: '{"shareOfPlate": …} or {"powerW": …}',
}

const noForm = (input: unknown, issue: Extract<Issue, { code: 'invalid_union' }>): Words => {
  const options = 'options' in issue && Array.isArray(issue.options) ? issue.options.map(String) : []
  if (options.length > 0) return noneOf(valueAt(input, issue.path), options)
  const form = forms[String(issue.path.at(-1))]
  return ['It has none of the forms it may have', form === undefined ? seeGuide : `Write ${form}`]
}

type Bound = Extract<Issue, { code: 'too_small' | 'too_big' }>

const bounded = ({ origin, inclusive = true, message }: Bound, side: 'at least' | 'at most', limit: number): Words => {
  const isLeast = side === 'at least'
  if (origin === 'array' && limit === 1 && isLeast) return ['The list is empty', 'Write at least one']
  if (origin === 'array')
    return [`The list holds ${isLeast ? 'fewer' : 'more'} than ${limit}`, `Write ${side} ${limit}`]
  if (origin === 'string') return ['The text is empty', 'Write it in a few words']
  const range = inclusive ? `${side} ${limit}` : `${isLeast ? 'above' : 'below'} ${limit}`
  // The form has words of its own for some numbers.
  const what = message.startsWith('Too ') ? `The number is not ${range}` : message
  return [what, `Write a number ${inclusive ? 'that is ' : ''}${range}`]
}
