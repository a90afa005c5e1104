import type { Path } from '../../base/form/place-text.ts'
import { parse } from '../../base/parse.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { nearest } from '../../base/nearest.ts'
import type { Blueprint, Check } from '../../blueprint/schema.ts'
import { complaintIds, complaints, type Complaint } from '../../facts/complaints.ts'
import { sellerQuestions } from '../../facts/seller-questions.ts'
import type { ReadingResult } from '../result.ts'
import { advertSchema, type Advert } from './advert.ts'
import { unsure } from './answer-chances.ts'
import { isForTheSpot } from './for-the-spot.ts'

/** An advert as it came in, checked for its form. Refused with each mistake; `place`: how a place in it was typed. */
export const parseAdvert = (input: unknown, place?: (path: Path) => string): Result<Advert> =>
  parse(advertSchema, input, 'advert', place)

/** The advert, if everything it names is in the blueprint and the lists of questions; else what is wrong and what would be right. */
export const checkAdvert = (advert: Advert, blueprint: Blueprint): Result<Advert> => {
  const problems = [
    ...missingProblems(advert, blueprint),
    ...complaintProblems(advert, blueprint),
    ...answerProblems(advert),
    ...lookedProblems(advert, blueprint),
  ]
  return problems.length === 0 ? ok(advert) : refused(...problems)
}

const unknown = (what: string, where: string, id: string, known: readonly string[]): Problem => {
  const meant = nearest(id, known)
  const mend = meant === null || known.length <= 8 ? `Use one of ${known.join(', ')}` : `Did you mean ${meant}`
  return problem(`unknown-${what}`, where, `“${id}” is not ${/^[aeiou]/.test(what) ? 'an' : 'a'} ${what} here`, mend)
}

const missingProblems = ({ missing }: Advert, { parts }: Blueprint): readonly Problem[] => {
  const known = parts.map(({ id }) => id)
  return missing.flatMap((id, i) => (known.includes(id) ? [] : [unknown('part', `missing[${i}]`, id, known)]))
}

const complaintProblems = (advert: Advert, { name, faults }: Blueprint): readonly Problem[] => {
  const fits = (id: Complaint): boolean => faults.some((fault) => (fault.complaints[id] ?? 0) > 0)
  return (advert.complaints ?? []).flatMap((id, i) => {
    if (fits(id)) return []
    const what = `“${complaints[id]}” fits no fault of “${name}”`
    const mend = `Leave it out, choose another blueprint, or use one of ${complaintIds.filter(fits).join(', ')}`
    return [problem('complaint-does-not-fit', `complaints[${i}]`, what, mend)]
  })
}

/** What is wrong with answers: questions and answers that there are, each question once. */
export const answerProblems = ({ answers }: Pick<Advert, 'answers'>): readonly Problem[] =>
  answers.flatMap(({ question, answer }, i) => {
    const asked = sellerQuestions.find(({ id }) => id === question)
    if (asked === undefined)
      return [unknown('question', `answers[${i}].question`, question, sellerQuestions.map(({ id }) => id))] // prettier-ignore
    if (answers.findIndex((other) => other.question === question) < i)
      return [problem('answered-twice', `answers[${i}]`, `“${asked.text}” has two answers`, 'Keep one of them')]
    const known = [...Object.keys(asked.answers), unsure]
    return known.includes(answer) ? [] : [unknown('answer', `answers[${i}].answer`, answer, known)]
  })

const lookedProblems = ({ looked }: Advert, blueprint: Blueprint): readonly Problem[] =>
  looked.flatMap(({ check, result }, i) => {
    const { checks } = blueprint
    const made = checks.find(({ id }) => id === check)
    if (made === undefined) return [unknown('check', `looked[${i}].check`, check, checks.map(({ id }) => id))] // prettier-ignore
    if (!isForTheSpot(blueprint, made)) return [notForTheSpot(made, `looked[${i}].check`)]
    return resultProblems(made, result, `looked[${i}].result`)
  })

const notForTheSpot = ({ name }: Check, where: string): Problem =>
  problem(
    'not-for-the-spot',
    where,
    `“${name}” needs the machine opened or running, which is not done at the seller’s`,
    'Leave it out; enter it on the bench once the machine is yours',
  )

const resultProblems = (check: Check, result: ReadingResult, where: string): readonly Problem[] => {
  if (result.kind === 'cannot-tell') return []
  const wantsGrade = check.kind !== 'meter'
  if (wantsGrade !== (result.kind === 'grade')) {
    const mend = wantsGrade ? 'Give {"kind":"grade","outcome":…}' : 'Give ohms, open, charging or jumps'
    return [problem('result-does-not-fit', where, `“${check.name}” does not read like that`, mend)]
  }
  if (!wantsGrade || result.kind !== 'grade') return []
  const known = check.outcomes.map(({ id }) => id)
  return known.includes(result.outcome) ? [] : [unknown('outcome', `${where}.outcome`, result.outcome, known)]
}
