/** What the notes say to a claim, and which of them. */
export type Judged = {
  /** `not-placed`: of something that is neither the machine nor a known part. `own-words`: told in one's own words, and no note speaks of it. */
  readonly verdict: 'supported' | 'unsupported' | 'contradicted' | 'not-placed' | 'own-words'
  readonly why: string
  readonly notes: readonly string[]
}

export const yes = (why: string, notes: readonly string[]): Judged => ({ verdict: 'supported', why, notes })
export const no = (why: string, notes: readonly string[] = []): Judged => ({ verdict: 'contradicted', why, notes })
export const unsaid = (why: string): Judged => ({ verdict: 'unsupported', why, notes: [] })
export const notPlaced = (why: string): Judged => ({ verdict: 'not-placed', why, notes: [] })

export const noteOf = ({ note }: { readonly note: string }): string => note
