import type { Fault } from '../../blueprint/schema.ts'
import type { BeliefEvent } from '../../engines/belief/index.ts'
import type { Answers, SellerQuestion, Trait } from '../../facts/seller-question.ts'
import type { MachineModel } from '../model.ts'

/** The answer that says nothing; may be given to every question. */
export const unsure = 'unsure'

/** A fault is named by a complaint that it causes with this chance or more. */
const causesFrom = 0.3

/** Whether a fault has a trait. */
const hasTrait = (fault: Fault, trait: Trait): boolean => {
  if (trait === 'comes-and-goes') return fault.comesAndGoes !== undefined
  if (trait === 'short') return fault.electrical.some(({ becomes }) => becomes === 'short')
  const [kind, name = ''] = trait.split(':')
  if (kind === 'component') return fault.rate.component?.id === name
  return Object.entries(fault.complaints).some(([id, chance]) => id === name && chance >= causesFrom)
}

/** The place of the first row of a question that names a fault; after the last one where none does. */
const placeOf = ({ under }: SellerQuestion, fault: Fault): number => {
  const place = under.findIndex(({ of }) => of.some((trait) => hasTrait(fault, trait)))
  return place < 0 ? under.length : place
}

/** Whether a question bears on any fault of a blueprint. */
export const bearsOn = (question: SellerQuestion, faults: readonly Fault[]): boolean =>
  faults.some((fault) => placeOf(question, fault) < question.under.length)

/**
 * Probability of each answer for each of some suspects of the model, were every answer right; by answer, in the question's
 * order. Of several faults the one of the earliest row is what the seller tells of.
 */
export const answerTable = (
  { blueprint, sets }: MachineModel,
  suspects: readonly number[],
  question: SellerQuestion,
): readonly Float64Array[] => {
  const { under, usual } = question
  const places = blueprint.faults.map((fault) => placeOf(question, fault))
  const rows: readonly Answers[] = [...under.map(({ shows }) => shows), usual]
  const rowOf = suspects.map((s) => rows[sets[s].reduce((first, f) => Math.min(first, places[f]), under.length)])
  return Object.keys(question.answers).map((answer) => Float64Array.from(rowOf, (row) => row[answer] ?? 0))
}

/** An answer as evidence: right, or wrong and then any of the answers. */
export const answerEvent = (model: MachineModel, question: SellerQuestion, answer: string): BeliefEvent => {
  const answers = Object.keys(question.answers)
  return {
    kind: 'reading',
    id: `answer ${question.id}`,
    likelihood: [...answerTable(model, [...model.sets.keys()], question)[answers.indexOf(answer)]],
    slip: question.wrongShare,
    slipLikelihood: 1 / answers.length,
  }
}
