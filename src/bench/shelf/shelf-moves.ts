import { problem, type Problem } from '../../base/problem.ts'
import { foldNotes } from '../fold.ts'
import type { Note } from '../note.ts'
import type { LogDeps } from '../logs/log-commands.ts'
import type { LogWrite } from '../ports.ts'
import type { PartContent } from './part-note.ts'
import { partProblems } from './part-rules.ts'
import { noSuchPart, shelf } from './shelf-commands.ts'
import { foldPart, type PartEntry } from './part-state.ts'

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
    return entryFor(deps, notes, content.shelfPart, note, {
      kind: 'used',
      machine: note.machine,
      costMinor: content.costMinor,
    })
  }
  if (content.kind !== 'struck') return { kind: 'none' }
  const struck = notes.find(({ id }) => id === content.note)?.content
  const part = struck?.kind === 'repaired' || struck?.kind === 'took-off' ? struck.shelfPart : undefined
  if (part === undefined) return { kind: 'none' }
  return entryFor(deps, notes, part, note, { kind: 'struck', note: content.note, reason: content.reason })
}

const entryFor = async (
  deps: Pick<LogDeps, 'logs'>,
  notes: readonly Note[],
  part: string,
  note: Note,
  content: PartContent,
): Promise<ShelfSide> => {
  const entries = await shelf.entries(deps, part)
  if (entries.length === 0) return { kind: 'refused', problems: [noSuchPart(part)] }
  const problems = [...partProblems(entries, content), ...(content.kind === 'used' ? intoProblems(notes, entries) : [])]
  if (problems.length > 0) return { kind: 'refused', problems }
  const entry: PartEntry = { id: note.id, log: part, seq: entries.length + 1, at: note.at, content }
  return {
    kind: 'write',
    write: { kind: 'part', id: part, expectedVersion: entries.length, entries: [entry] },
  }
}

/** What stands against a part of the shelf going into this machine, whatever the part's own log says. */
const intoProblems = (notes: readonly Note[], entries: readonly PartEntry[]): readonly Problem[] => {
  const { currency, practiceSeed } = foldNotes(notes)
  if (practiceSeed !== null) return [virtualMachine('shelfPart')]
  return foldPart(entries).currency === currency ? [] : [otherMoney]
}

/** A virtual machine has no part that could lie on a shelf, and takes none from it. */
export const virtualMachine = (where: string): Problem =>
  problem(
    'virtual-machine',
    where,
    'This is a virtual machine, and the parts on the shelf are real',
    'Leave the shelf out of it',
  )

const otherMoney = problem(
  'other-currency',
  'shelfPart',
  'The part stands on the shelf in another currency than the machine',
  'Take another one, or enter what it cost as a part that was bought',
)
