import { problem, type Problem } from '../base/problem.ts'
import { checkNote } from './append.ts'
import type { CommandDeps } from './command-outcome.ts'
import { foldNotes } from './fold.ts'
import type { Note, NoteContent } from './note.ts'
import { unknownId } from './unknown.ts'

/** The rules at the door, with the blueprint looked up that the machine is read by now. */
export const checked = async (
  deps: CommandDeps,
  notes: readonly Note[],
  content: NoteContent,
): Promise<readonly Problem[]> => {
  const id = notes.length > 0 ? foldNotes(notes).blueprint : content.kind === 'added' ? content.blueprint : undefined
  if (id === undefined) return [notAdded]
  const blueprint = await deps.blueprintById(id)
  if (blueprint === undefined) return [unknownId('blueprint', 'blueprint', id, await deps.blueprintIds())]
  const result = checkNote(notes, content, blueprint)
  if (result.kind === 'refused') return result.problems
  if (content.kind !== 'described-by' || (await deps.blueprintById(content.blueprint)) !== undefined) return []
  return [unknownId('blueprint', 'blueprint', content.blueprint, await deps.blueprintIds())]
}

const notAdded = problem(
  'first-note',
  'kind',
  'The first note of a machine says that it came in',
  'Send a note of the kind “added”',
)
