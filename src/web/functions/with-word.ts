import type { NoteContentInput } from '../../bench/note.ts'

/** The notes of an answer with a word on it: a trial bears the word itself; a reading has none of its own, and a remark follows it. */
export const notesWithWord = (note: NoteContentInput, word: string): readonly NoteContentInput[] => {
  const text = word.trim()
  if (text === '') return [note]
  return note.kind === 'tried' ? [{ ...note, text }] : [note, { kind: 'said', text }]
}
