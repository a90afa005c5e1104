import { problem, type Problem } from '../../base/problem.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { cleaningTaskIds, otherCleaning } from '../../facts/cleaning-tasks.ts'
import { standing } from '../fold.ts'
import type { Note, NoteContent } from '../note.ts'
import { unknownId } from '../unknown.ts'

type CleanContent = Extract<NoteContent, { kind: 'cleaned' | 'dried' | 'graded' }>

const known: readonly string[] = [...cleaningTaskIds, otherCleaning.id]

/** What stands against this note of cleaning. */
export const cleaningProblems = (
  content: CleanContent,
  notes: readonly Note[],
  blueprint: Blueprint,
): readonly Problem[] => {
  if (content.kind === 'dried') return driedProblems(content.note, notes)
  const parts = blueprint.parts.map(({ id }) => id)
  return [
    ...(content.kind === 'cleaned' ? taskProblems(content.task, content.text) : []),
    ...(content.part === undefined || parts.includes(content.part)
      ? []
      : [unknownId('part', 'part', content.part, parts)]),
  ]
}

const taskProblems = (task: string, text: string): readonly Problem[] => {
  if (!known.includes(task)) return [unknownId('task', 'task', task, known)]
  return task === otherCleaning.id && text === '' ? [notSaid] : []
}

const notSaid = problem('nothing-said', 'text', 'Other cleaning says nothing by itself', 'Say in words what was done')

/** Only what was washed and is still drying can be found dry. */
const driedProblems = (id: string, notes: readonly Note[]): readonly Problem[] => {
  const own = standing(notes)
  const washed = own.find((note) => note.id === id)?.content
  if (washed?.kind !== 'cleaned' || washed.dryHours === undefined || washed.dryHours === 0) {
    return [problem('nothing-drying', 'note', `Nothing was put to dry in the note “${id}”`, 'Name a note of washing')]
  }
  if (own.some(({ content }) => content.kind === 'dried' && content.note === id)) {
    return [problem('dry-already', 'note', 'It was found dry already', 'Nothing is left to do')]
  }
  return []
}
