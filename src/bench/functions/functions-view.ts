import { functionChecks, type FunctionRow, type FunctionsView } from '../../machine/functions/function-checks.ts'
import { triedName } from '../../machine/functions/tried-result.ts'
import type { Job } from '../../machine/job.ts'
import type { NoteContentInput } from '../note.ts'

/** Something that can be said of a function, with the note that saying it is. */
export type FunctionAnswer = {
  readonly id: string
  readonly name: string
  readonly danger: boolean
  readonly note: NoteContentInput
}

/** A function with what can be said of it: what its check shows, good first; then that it is not there, and that it could not be told. */
export type AnswerableRow = FunctionRow & { readonly answers: readonly FunctionAnswer[] }
export type AnswerableFunctions = Omit<FunctionsView, 'rows'> & { readonly rows: readonly AnswerableRow[] }

/** The functions of a machine in hand, each with the notes that answer it. */
export const functionsView = (job: Job): AnswerableFunctions => {
  const view = functionChecks(job)
  return { ...view, rows: view.rows.map((row) => ({ ...row, answers: answersTo(row) })) }
}

const answersTo = (row: FunctionRow): readonly FunctionAnswer[] => [
  ...row.outcomes.map(({ id, name, danger }) => ({ id, name, danger, note: outcomeNote(row, id) })),
  ...(row.mayBeMissing ? [plain('not-there', notThereNote(row))] : []),
  plain('cannot-tell', cannotTellNote(row)),
]

const plain = (id: 'not-there' | 'cannot-tell', note: NoteContentInput): FunctionAnswer => ({
  id,
  name: triedName[id],
  danger: false,
  note,
})

/** A reading where the function is a check of the blueprint, else a trial of its own. */
const outcomeNote = ({ id, check, minutes }: FunctionRow, outcome: string): NoteContentInput =>
  check === null
    ? { kind: 'tried', function: id, result: outcome === 'good' ? 'good' : 'bad', minutes }
    : { kind: 'reading', check, result: { kind: 'grade', outcome }, minutes }

const notThereNote = ({ id, part }: FunctionRow): NoteContentInput => ({
  kind: 'tried',
  function: id,
  result: 'not-there',
  ...(part === null ? {} : { part: part.id }),
})

const cannotTellNote = ({ id, check, minutes }: FunctionRow): NoteContentInput =>
  check === null
    ? { kind: 'tried', function: id, result: 'cannot-tell', minutes }
    : { kind: 'reading', check, result: { kind: 'cannot-tell' }, minutes }
