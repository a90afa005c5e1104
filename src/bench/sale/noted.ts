import type { NoteContent } from '../note.ts'

/** A content of this kind with the note that it stands in. */
export type Noted<Kind extends NoteContent['kind']> = Extract<NoteContent, { kind: Kind }> & { readonly note: string }

/** Own words of a note. */
export type NotedWords = { readonly note: string; readonly text: string }
