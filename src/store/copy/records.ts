import { z } from 'zod'
import { entrySchema, logKinds } from '../../bench/logs/entry.ts'
import { noteSchema } from '../../bench/note.ts'
import { ownBlueprintSchema } from '../../bench/own-blueprint.ts'
import { personSchema } from '../../bench/people/person.ts'
import { keptChangeSchema } from '../../bench/settings-change.ts'

const id = z.string().min(1).max(120)

/**
 * What a store holds that cannot be made again from something else: each log whole, in order; people; blueprints of one's own; changes
 * of the settings. Devices that are signed in are not among it: they sign in again.
 */
export const keptRecordSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('machine'), bench: id, id, notes: z.array(noteSchema).min(1) }),
  z.strictObject({
    kind: z.literal('log'),
    bench: id,
    logKind: z.enum(logKinds),
    id,
    entries: z.array(entrySchema).min(1),
  }),
  z.strictObject({ kind: z.literal('person'), person: personSchema }),
  z.strictObject({ kind: z.literal('blueprint'), own: ownBlueprintSchema }),
  z.strictObject({ kind: z.literal('settings'), change: keptChangeSchema }),
])
export type KeptRecord = z.infer<typeof keptRecordSchema>
