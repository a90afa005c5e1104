import type { Drying } from '../contract.ts'
import type { Note, NoteContent } from '../note.ts'

type CleanedContent = Extract<NoteContent, { kind: 'cleaned' }>

const hourMs = 3_600_000

/** What begins to dry with a note of washing; nothing where it needs no drying. Hours are counted in UTC, so no change of clocks bends them. */
export const dryingFrom = ({ id, at }: Note, { task, part, dryHours }: CleanedContent): readonly Drying[] =>
  dryHours === undefined || dryHours === 0
    ? []
    : [
        {
          note: id,
          task,
          part: part ?? null,
          from: at,
          readyAt: new Date(Date.parse(at) + dryHours * hourMs).toISOString(),
        },
      ]
