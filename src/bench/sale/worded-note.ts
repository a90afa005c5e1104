import { z } from 'zod'

/** The parts of a sale sheet, in the order in which they stand on it. */
export const sheetSections = ['title', 'opening', 'wrong', 'done', 'tested', 'worn', 'with-it', 'closing'] as const
export type SheetSection = (typeof sheetSections)[number]

/** One's own words for a section of the sale sheet; empty: what the notes say stands again. */
export const wordedSchema = z.strictObject({
  kind: z.literal('worded'),
  section: z.enum(sheetSections),
  text: z.string().trim().max(4000),
})

/** The camera runs from here on, or stopped; times of chapters count from the moment it ran. */
export const cameraSchema = z.strictObject({
  kind: z.literal('camera'),
  state: z.enum(['rolling', 'stopped']),
  /** Which film it is, in one's own words. */
  film: z.string().trim().max(120).default(''),
})
