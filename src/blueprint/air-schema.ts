import { z } from 'zod'
import { airPassages, type AirPassageId } from '../facts/air-passages.ts'

const id = z.string().regex(/^[a-z0-9]+([.-][a-z0-9]+)*$/, 'an id is lower-case words joined by . or -')
const text = z.string().min(1)
const positive = z.number().positive()

/** What the air meets at a part of the air path. A part without this lets it pass freely. */
export const airSectionSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('hose'),
    make: z.enum(['stretch', 'smoothLined']),
    diameterM: positive,
    lengthM: positive,
  }),
  /** A passage of a kind that is known: its losses are in facts/air-passages.ts. */
  z.strictObject({ kind: z.literal('passage'), like: z.enum(Object.keys(airPassages) as AirPassageId[]) }),
  /** The fan that draws from the parts before it and blows into those after. */
  z.strictObject({ kind: z.literal('fan') }),
])

/** Beside which part of the air path air comes in, and on which side of it as the air goes. */
const airPlace = { part: id, side: z.enum(['before', 'after']) }

/** What a fault does to the air. `share`: how likely a machine with the fault shows it in its air at all. */
export const airEffectSchema = z.discriminatedUnion('does', [
  z.strictObject({ does: z.literal('blocks'), part: id, share: positive.max(1).default(1) }),
  z.strictObject({ does: z.literal('leaks'), ...airPlace, share: positive.max(1).default(1) }),
  /** A valve, slider or flap that stands open. */
  z.strictObject({ does: z.literal('stands-open'), ...airPlace, share: positive.max(1).default(1) }),
  z.strictObject({ does: z.literal('slows-motor'), share: positive.max(1).default(1) }),
  z.strictObject({ does: z.literal('weakens-fan'), share: positive.max(1).default(1) }),
])

/**
 * A way in where a gauge rig can be fitted. The air then goes through the parts of the air path from `from` on, without those in `past`;
 * what else there is of the path is shut off or taken off.
 */
export const airWaySchema = z.strictObject({
  id,
  name: text,
  /** What to take off or set for it, in plain words. */
  how: text,
  from: id,
  past: z.array(id).default([]),
})

export type AirSection = z.infer<typeof airSectionSchema>
export type AirEffect = z.infer<typeof airEffectSchema>
export type AirWay = z.infer<typeof airWaySchema>
