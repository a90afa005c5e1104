import type { Source } from './source.ts'

/** A source as one line of text: title, edition, clause, and how the figure was come by. */
export const sourceText = (source: Pick<Source, 'title' | 'edition' | 'clause' | 'evidence'>): string =>
  [source.title, source.edition, source.clause].filter((part) => part !== undefined).join(', ') +
  ` (${source.evidence})`
