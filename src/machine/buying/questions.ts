import { sellerQuestions } from '../../facts/seller-questions.ts'
import type { SellerQuestion } from '../../facts/seller-question.ts'
import type { MachineModel } from '../model.ts'
import { answerTable, bearsOn, unsure } from './answer-chances.ts'
import type { QuestionView } from './buying-view.ts'
import { weigh, type Deal, type Told } from './wagers.ts'

/** Questions of this kind that bear on the blueprint and have no answer yet. */
export const openQuestions = (
  model: MachineModel,
  hows: readonly SellerQuestion['how'][],
  answered: readonly string[],
): readonly SellerQuestion[] =>
  sellerQuestions.filter(
    (question) =>
      hows.includes(question.how) && !answered.includes(question.id) && bearsOn(question, model.blueprint.faults),
  )

/** What may be answered, `unsure` among it, with the chance of each under each suspect that the plan keeps. */
export const answersTold = (
  model: MachineModel,
  kept: readonly number[],
  question: SellerQuestion,
): readonly Told[] => {
  const answers = Object.keys(question.answers)
  const table = answerTable(model, kept, question)
  const said = answers.map((id, a) => ({
    id,
    chance: table[a].map((right) => (1 - question.unsureShare) * heard(question, right, answers.length)),
  }))
  return [...said, { id: unsure, chance: new Float64Array(kept.length).fill(question.unsureShare) }]
}

const heard = ({ wrongShare }: SellerQuestion, right: number, answers: number): number =>
  (1 - wrongShare) * right + wrongShare / answers

/** A question with what its answer is worth before buying. */
export const questionView = (
  model: MachineModel,
  kept: readonly number[],
  deal: Deal,
  question: SellerQuestion,
): QuestionView => {
  const { valueMinor, movesMinor, results } = weigh(deal, answersTold(model, kept, question))
  return {
    id: question.id,
    how: question.how,
    text: question.text,
    minutes: question.minutes,
    valueMinor,
    movesMinor,
    results: results.map(({ id, probability, ceilingMinor }) => ({
      id,
      text: question.answers[id] ?? 'no answer, or does not know',
      probability,
      ceilingMinor,
    })),
  }
}

/** Most worth first; where no answer would change the deal, the one that moves the ceiling most. */
export const byWorth = (a: Worth, b: Worth): number => b.valueMinor - a.valueMinor || b.movesMinor - a.movesMinor
type Worth = { readonly valueMinor: number; readonly movesMinor: number }

/** The same by the minute. */
export const byWorthAMinute = (a: Worth & Taking, b: Worth & Taking): number =>
  b.valueMinor / b.minutes - a.valueMinor / a.minutes || b.movesMinor / b.minutes - a.movesMinor / a.minutes
type Taking = { readonly minutes: number }
