/** What the notes say to a claim, and which of them. */
export type Judged = {
  /** `own-words`: told in one's own words, and no note speaks of it. */
  readonly verdict: 'supported' | 'unsupported' | 'contradicted' | 'own-words'
  readonly why: string
  readonly notes: readonly string[]
}

export const yes = (why: string, notes: readonly string[]): Judged => ({ verdict: 'supported', why, notes })
export const no = (why: string, notes: readonly string[] = []): Judged => ({ verdict: 'contradicted', why, notes })
export const unsaid = (why: string): Judged => ({ verdict: 'unsupported', why, notes: [] })

export const noteOf = ({ note }: { readonly note: string }): string => note
