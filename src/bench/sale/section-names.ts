import type { SheetSection } from './worded-note.ts'

/** The sections of a sale sheet as they are called inside a sentence. */
export const sectionNames: Readonly<Record<SheetSection, string>> = {
  title: 'title',
  opening: 'what it is',
  wrong: 'what was wrong',
  done: 'what was done',
  tested: 'what was tested',
  worn: 'what is worn',
  'with-it': 'what comes with it',
  closing: 'last words',
}
