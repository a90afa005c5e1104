import { problem, type Problem } from '../../base/problem.ts'
import { logCommands } from '../logs/log-commands.ts'
import { strikeProblems } from '../logs/strike-problems.ts'
import { advertContentSchema, type AdvertContent } from './advert-note.ts'
import { foldAdvert, type AdvertEntry, type AdvertState } from './advert-state.ts'

/** What stands against writing this next about an advert. */
export const advertProblems = (entries: readonly AdvertEntry[], content: AdvertContent): readonly Problem[] => {
  if (entries.length > 0) return nextProblems(entries, content)
  return content.kind === 'weighed' ? [] : [weighFirst]
}

/** Adverts that are weighed: what they say, what was reckoned of them, and what came of it. */
export const adverts = logCommands<AdvertContent, AdvertState>({
  kind: 'advert',
  name: 'advert',
  schema: advertContentSchema,
  problems: (entries, content) => advertProblems(entries, content),
  fold: foldAdvert,
})

const nextProblems = (entries: readonly AdvertEntry[], content: AdvertContent): readonly Problem[] => {
  if (content.kind === 'struck') {
    return content.note === entries[0]?.id ? [firstStays] : strikeProblems(entries, content.note)
  }
  if (content.kind === 'said') return []
  const { decided } = foldAdvert(entries)
  return decided === null ? [] : [decided.kind === 'bought' ? boughtAlready : passedAlready]
}

const weighFirst = problem('weigh-first', 'kind', 'This advert has not been weighed yet', 'Say what it offers first')
const firstStays = problem(
  'cannot-strike',
  'note',
  'The first entry of an advert cannot be struck out',
  'Pass it by instead, and say why',
)
const boughtAlready = problem(
  'bought-already',
  'kind',
  'The machine of this advert was bought already',
  'Go on with the machine; if that was a slip, strike out the entry of it',
)
const passedAlready = problem(
  'passed-already',
  'kind',
  'This advert was passed by already',
  'If that was a slip, strike out the entry of it',
)
