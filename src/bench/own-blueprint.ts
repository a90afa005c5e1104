import { z } from 'zod'
import { editsSchema } from '../blueprint/adapt-edits.ts'
import { blueprintSchema } from '../blueprint/schema.ts'

/** A blueprint of one's own as it is kept: whole, with what it was made from. */
export const ownBlueprintSchema = z.strictObject({
  /** `own-<name>-<revision>`; also the id inside the blueprint. */
  id: z
    .string()
    .regex(/^own-[a-z0-9]+(-[a-z0-9]+)*-[1-9][0-9]*$/, 'the id of a blueprint of one’s own is such as own-tub-1'),
  name: z.string().min(1),
  /** The blueprint that it was adapted from; null when it was written or imported whole. */
  base: z.string().nullable(),
  /** What was changed on the base. */
  edits: editsSchema,
  blueprint: blueprintSchema,
  savedAt: z.iso.datetime(),
})

export type OwnBlueprint = z.infer<typeof ownBlueprintSchema>

const longestSlug = 40

/** The part of an id that says the name: `Görel 2, no cut-out` → `gorel-2-no-cut-out`. `blueprint` when no letter is left. */
export const slugOf = (name: string): string => {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
  const slug = trimmed(trimmed(plain).slice(0, longestSlug))
  return slug === '' ? 'blueprint' : slug
}

const trimmed = (text: string): string => text.replace(/^-+|-+$/g, '')

/** The id of the next revision under this name. */
export const nextOwnId = (name: string, taken: readonly string[]): string => {
  const start = `own-${slugOf(name)}-`
  const revisions = taken.flatMap((id) =>
    id.startsWith(start) && /^[1-9][0-9]*$/.test(id.slice(start.length)) ? [Number(id.slice(start.length))] : [],
  )
  return `${start}${Math.max(0, ...revisions) + 1}`
}
