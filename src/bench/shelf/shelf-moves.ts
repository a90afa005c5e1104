import type { Problem } from '../../base/problem.ts'
import type { Note } from '../note.ts'
import type { LogDeps } from '../logs/log-commands.ts'
import type { LogWrite } from '../ports.ts'
import type { PartContent } from './part-note.ts'
import { partProblems } from './part-rules.ts'
import { noSuchPart, shelf } from './shelf-commands.ts'
import type { PartEntry } from './part-state.ts'

/** What a note of a machine writes on the shelf at the same moment: nothing, an entry of a part, or what is wrong with that. */
export type ShelfSide =
  | { readonly kind: 'none' }
  | { readonly kind: 'write'; readonly write: LogWrite }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }

/**
 * The shelf's side of a machine's note. A repair with a part of the shelf uses it up there; striking out such a repair, or a part taken off,
 * strikes out the other side too. The entry has the note's id, so that each is found by the other.
 */
export const shelfSide = async (
  deps: Pick<LogDeps, 'logs'>,
  notes: readonly Note[],
  note: Note,
): Promise<ShelfSide> => {
  const { content } = note
  if (content.kind === 'repaired' && content.shelfPart !== undefined) {
    return entryFor(deps, content.shelfPart, note, {
      kind: 'used',
      machine: note.machine,
      costMinor: content.costMinor,
    })
  }
  if (content.kind !== 'struck') return { kind: 'none' }
  const struck = notes.find(({ id }) => id === content.note)?.content
  const part = struck?.kind === 'repaired' || struck?.kind === 'took-off' ? struck.shelfPart : undefined
  if (part === undefined) return { kind: 'none' }
  return entryFor(deps, part, note, { kind: 'struck', note: content.note, reason: content.reason })
}

const entryFor = async (
  deps: Pick<LogDeps, 'logs'>,
  part: string,
  note: Note,
  content: PartContent,
): Promise<ShelfSide> => {
  const entries = await shelf.entries(deps, part)
  if (entries.length === 0) return { kind: 'refused', problems: [noSuchPart(part)] }
  const problems = partProblems(entries, content)
  if (problems.length > 0) return { kind: 'refused', problems }
  const entry: PartEntry = { id: note.id, log: part, seq: entries.length + 1, at: note.at, content }
  return {
    kind: 'write',
    write: { kind: 'part', id: part, expectedVersion: entries.length, entries: [entry] },
  }
}
