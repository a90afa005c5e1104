import { problem, type Problem } from '../../base/problem.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { Note } from '../note.ts'
import { unknownId } from '../unknown.ts'
import type { PhotoNote } from './photo-note.ts'

/** What stands against this photograph's note: what it shows must be on the machine. */
export const photoProblems = (
  { about }: PhotoNote,
  notes: readonly Note[],
  { parts, faults }: Pick<Blueprint, 'parts' | 'faults'>,
): readonly Problem[] => {
  switch (about.kind) {
    case 'machine':
      return []
    case 'part':
      return known('part', 'about.part', about.part, parts)
    case 'fault':
      return known('fault', 'about.fault', about.fault, faults)
    case 'note':
      return notes.some(({ id }) => id === about.note)
        ? []
        : [
            problem(
              'unknown-note',
              'about.note',
              `“${about.note}” is not a note of this machine`,
              'Name a note of its log',
            ),
          ]
  }
}

const known = (what: string, where: string, id: string, all: readonly { readonly id: string }[]): readonly Problem[] =>
  all.some((one) => one.id === id)
    ? []
    : [
        unknownId(
          what,
          where,
          id,
          all.map((one) => one.id),
        ),
      ]
