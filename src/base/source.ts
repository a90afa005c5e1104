import { z } from 'zod'

/** How far a figure can be trusted as to where it comes from. */
export const evidenceSchema = z.enum([
  'retrieved',
  'from memory',
  'derived',
  'open data',
  'common practice',
  'judgement',
])

/** Where a figure comes from. Screens and reports show it on request. */
export const sourceSchema = z.strictObject({
  title: z.string().min(1),
  /** Edition or year, where there is one. */
  edition: z.string().optional(),
  /** Clause, table, section or page. */
  clause: z.string().optional(),
  url: z.string().optional(),
  evidence: evidenceSchema,
})
export type Source = z.infer<typeof sourceSchema>
