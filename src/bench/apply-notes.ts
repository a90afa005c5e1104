import type { Problem } from '../base/problem.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { checkNote } from './append.ts'
import type { MachineDocument } from './contract.ts'
import { noteContentSchema, type Note, type NoteContentInput } from './note.ts'
import { documentOf } from './queries.ts'

/** A note that was made away from the bench. */
export type MadeNote = { readonly id: string; readonly madeAt: string; readonly content: NoteContentInput }

/** A machine with notes put to it, and those that the rules refuse. */
export type AppliedNotes = {
  readonly document: MachineDocument
  readonly refused: readonly { readonly id: string; readonly problems: readonly Problem[] }[]
}

/**
 * Puts notes to a machine as the bench would, away from the bench: each by the same rules, in order. Notes that the machine has
 * already, by id, change nothing. The machine may be read by another blueprint afterwards only where that is the one given.
 */
export const applyNotes = async (
  document: MachineDocument,
  blueprint: Blueprint,
  made: readonly MadeNote[],
): Promise<AppliedNotes> => {
  const refused: { id: string; problems: readonly Problem[] }[] = []
  let notes: readonly Note[] = document.notes
  for (const { id, madeAt, content } of made) {
    if (notes.some((note) => note.id === id)) continue
    const parsed = noteContentSchema.parse(content)
    const checked = checkNote(notes, parsed, blueprint)
    if (checked.kind === 'refused') refused.push({ id, problems: checked.problems })
    else notes = [...notes, { id, machine: document.state.id, seq: notes.length + 1, at: madeAt, content: parsed }]
  }
  return { document: await documentOf(notes, (id) => (id === blueprint.id ? blueprint : undefined)), refused }
}
