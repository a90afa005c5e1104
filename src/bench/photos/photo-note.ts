import { z } from 'zod'
import { saleShotIds } from '../../facts/sale-shots.ts'

const id = z.string().min(1).max(120)

/** What a photograph shows. */
export const photoAboutSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('machine') }),
  z.strictObject({ kind: z.literal('part'), part: id }),
  z.strictObject({ kind: z.literal('fault'), fault: id }),
  /** What another note tells of. */
  z.strictObject({ kind: z.literal('note'), note: id }),
])
export type PhotoAbout = z.infer<typeof photoAboutSchema>

/** Taken as it came in, while working on it, or when it was done. */
export const photoTimes = ['before', 'work', 'after'] as const
export type PhotoTime = (typeof photoTimes)[number]

/** The note of a photograph; the photograph itself is kept under its id. */
export const photoNoteSchema = z.strictObject({
  kind: z.literal('photo'),
  photo: z.string().regex(/^[0-9a-f]{64}$/, 'a photograph is named by the 64 digits it was answered with'),
  about: photoAboutSchema.default({ kind: 'machine' }),
  when: z.enum(photoTimes).default('work'),
  /** Which of the shots that sell a machine it is. */
  shot: z.enum(saleShotIds).optional(),
  text: z.string().trim().max(2000).default(''),
})
export type PhotoNote = z.infer<typeof photoNoteSchema>
