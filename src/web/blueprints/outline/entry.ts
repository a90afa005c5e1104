import type { BlueprintEntry, Feature } from '../../../blueprint/entry.ts'
import type { signQuestions, SignQuestionId } from '../../../blueprint/signs.ts'

type AnswerTo<Q extends SignQuestionId> = Extract<(typeof signQuestions)[number], { id: Q }>['answers'][number]['id']

type FirstAnswers = { readonly [Q in SignQuestionId]?: AnswerTo<Q> }

/** What is drawn of a blueprint: the first answer to each question, and what else is to be seen. */
export type Entry = FirstAnswers & { readonly features: readonly Feature[] }

/** The signs as they are drawn. */
export const drawnOf = ({ signs, features }: Pick<BlueprintEntry, 'signs' | 'features'>): Entry => {
  const first = Object.entries(signs).map(([question, answers]) => [question, answers[0]])
  return { ...(Object.fromEntries(first) as FirstAnswers), features }
}
