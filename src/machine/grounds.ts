import { inSentence } from '../base/in-sentence.ts'
import { complaints } from '../facts/complaints.ts'
import type { BeliefEvent } from '../engines/belief/index.ts'
import { toldPieces } from './buying/seller-evidence.ts'
import { functionById } from './functions/functions-of.ts'
import type { Job, JobEvent } from './job.ts'
import type { MachineModel } from './model.ts'
import { shiftsOf } from './history-shifts.ts'
import { beliefEvent, complaintPrior } from './suspects.ts'
import type { Ground } from './view.ts'

/** Factors between these say next to nothing and are left out. */
const strongest = 6
const saysSomething = 1.15

/** Likelihoods of one piece of evidence under each suspect, slips included, with the words for it. */
type Piece = {
  readonly note: string | null
  readonly text: string
  readonly likelihood: readonly number[]
  /** What the other faults are averaged over. */
  readonly weight: ArrayLike<number>
}

/**
 * What the probability of a fault rests on: for the complaint, what the seller said and each reading, how often it is met when the fault is there
 * over how often when it is not (Bayes factor), averaged over the other faults as they stood before any reading.
 */
export const groundsOf = (model: MachineModel, job: Job): ((fault: number) => readonly Ground[]) => {
  const weight = complaintPrior(model, job.complaints)
  const pieces = [
    ...complaintPiece(model, job),
    ...toldPieces(model, weight, job).map(({ text, event }) => ({ note: null, text, likelihood: met(event), weight })),
    ...readingPieces(model, job, weight),
  ]
  const life = (fault: number): readonly Ground[] =>
    shiftsOf(model.blueprint.faults[fault], job.history ?? {}).map(({ name, ratio }) => ({
      note: null,
      text: `This machine: ${name}`,
      factor: ratio,
    }))
  return (fault) =>
    [
      ...life(fault),
      ...pieces.map((piece) => ({
        note: piece.note,
        text: piece.text,
        factor: bayesFactor(model, piece.weight, piece.likelihood, fault),
      })),
    ]
      .filter(({ factor }) => factor > saysSomething || factor < 1 / saysSomething)
      .toSorted((a, b) => Math.abs(Math.log(b.factor)) - Math.abs(Math.log(a.factor)))
      .slice(0, strongest)
}

const complaintPiece = (model: MachineModel, job: Job): readonly Piece[] => {
  if (job.complaints.length === 0) return []
  const after = complaintPrior(model, job.complaints)
  const likelihood = after.map((value, s) => value / model.prior[s])
  return [
    {
      note: null,
      text: `Complaint: ${job.complaints.map((id) => complaints[id].toLowerCase()).join('; ')}`,
      likelihood,
      weight: model.prior,
    },
  ]
}

/** Likelihoods with the chance of a slip in them. */
const met = ({ likelihood, slip, slipLikelihood }: ReadingEvidence): readonly number[] =>
  likelihood.map((p) => (1 - slip) * p + slip * slipLikelihood)

type ReadingEvidence = Extract<BeliefEvent, { kind: 'reading' }>

const readingPieces = (model: MachineModel, job: Job, weight: ArrayLike<number>): readonly Piece[] =>
  job.events.flatMap((event) => {
    if (event.kind !== 'reading' && event.kind !== 'gauge' && event.kind !== 'tried') return []
    const name = pieceName(model, event)
    return beliefEvent(model, job, event).flatMap((reading) =>
      reading.kind === 'reading' ? [{ note: event.note, text: name, likelihood: met(reading), weight }] : [],
    )
  })

const pieceName = (model: MachineModel, event: JobEvent & { kind: 'reading' | 'gauge' | 'tried' }): string => {
  switch (event.kind) {
    case 'reading':
      return checkName(model, event.check)
    case 'gauge':
      return 'Gauge readings of the air'
    case 'tried':
      return `Tried: ${inSentence(functionById(model.blueprint, event.function)?.name ?? event.function)}`
  }
}

const checkName = ({ blueprint }: MachineModel, id: string): string =>
  blueprint.checks.find((check) => check.id === id)?.name ?? id

const bayesFactor = (
  model: MachineModel,
  weight: ArrayLike<number>,
  likelihood: readonly number[],
  fault: number,
): number => {
  const seen = [0, 0]
  const total = [0, 0]
  model.sets.forEach((set, s) => {
    const side = set.includes(fault) ? 1 : 0
    seen[side] = seen[side] + weight[s] * likelihood[s]
    total[side] = total[side] + weight[s]
  })
  return seen[1] / total[1] / (seen[0] / total[0])
}
