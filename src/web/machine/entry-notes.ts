import type { NoteContentInput } from '../../bench/note.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { instrumentFor } from '../../machine/scale.ts'
import type { ReadingResult } from '../../machine/result.ts'
import type { CheckMove, CoverStep, MoveView } from '../../machine/view.ts'

const covered = (kind: 'opened' | 'closed', steps: readonly CoverStep[]): readonly NoteContentInput[] =>
  steps.map((step) => ({ kind, cover: step.id, minutes: step.minutes }))

/** The covers that a move takes off and puts back, as notes: what came off must be on record before what was found behind it. */
export const coverNotes = (move: MoveView): readonly NoteContentInput[] => [
  ...covered('closed', move.close),
  ...covered('opened', move.open),
]

/** Minutes of the move itself, the covers' own minutes taken off. */
export const ownMinutes = (move: MoveView): number => {
  const covers = [...move.open, ...move.close].reduce((sum, step) => sum + step.minutes, 0)
  return Math.max(0, Math.round((move.minutes - covers) * 10) / 10)
}

/** The notes that enter a reading, covers first. */
export const readingNotes = (
  move: CheckMove,
  result: ReadingResult,
  blueprint: Blueprint,
): readonly NoteContentInput[] => {
  const check = blueprint.checks.find((one) => one.id === move.id)
  const minutes = check?.minutes ?? ownMinutes(move)
  const instrument = check === undefined ? undefined : instrumentFor(check)
  return [
    ...coverNotes(move),
    { kind: 'reading', check: move.id, result, minutes, ...(instrument === undefined ? {} : { instrument }) },
  ]
}
