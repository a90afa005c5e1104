import type { Problem } from '../base/problem.ts'
import { adaptBlueprint } from '../blueprint/adapt.ts'
import type { Edit } from '../blueprint/adapt-edits.ts'
import { editText } from '../blueprint/adapt-words.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { soundBlueprint } from './blueprints.ts'
import { listText } from './words.ts'

/** What edits come to, to be shown while they are put together; `gone` is empty when nothing goes along with them. */
export type AdaptedWords = {
  readonly texts: readonly string[]
  readonly gone: string
  readonly problems: readonly Problem[]
}

/** Each edit in words, and either what goes along with them or what is wrong. Nothing is kept. */
export const adaptedWords = (blueprint: Blueprint, edits: readonly Edit[]): AdaptedWords => {
  const texts = edits.map((edit) => editText(edit, blueprint))
  const adapted = soundBlueprint(adaptBlueprint(blueprint, edits))
  return adapted.kind === 'refused'
    ? { texts, gone: '', problems: adapted.problems }
    : { texts, gone: goneText(blueprint, adapted.value), problems: [] }
}

const goneText = (before: Blueprint, after: Blueprint): string => {
  const counts = (['fault', 'check', 'repair'] as const).flatMap((what) => {
    const count = before[`${what}s`].length - after[`${what}s`].length
    return count === 0 ? [] : [`${count} ${what}${count === 1 ? '' : 's'}`]
  })
  return counts.length === 0 ? '' : `With that go ${listText(counts)}.`
}
