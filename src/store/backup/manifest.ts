import { z } from 'zod'
import type { KeptSize } from '../copy/kept-photos.ts'

export const manifestName = 'manifest.json'
export const readmeName = 'README.txt'

const count = z.number().int().min(0)

export const countsSchema = z.strictObject({
  machines: count,
  notes: count,
  logs: count,
  entries: count,
  people: count,
  blueprints: count,
  settings: count,
  photographs: count,
})
export type Counts = z.infer<typeof countsSchema>

/** What a backup says of itself. It is written last: a file that was cut off has none. */
export const manifestSchema = z.strictObject({
  format: z.literal('thrum-backup-1'),
  madeAt: z.iso.datetime(),
  counts: countsSchema,
  /** Every other file in it. */
  files: z.array(
    z.strictObject({
      name: z.string(),
      bytes: count,
      sha256: z.string().regex(/^[0-9a-f]{64}$/, 'a sum is 64 digits and letters a to f'),
    }),
  ),
})
export type Manifest = z.infer<typeof manifestSchema>

/** `photographs/<id>-large.jpg`; a file as it was sent may be of any form, so its name has no ending. */
export const photoName = (id: string, size: KeptSize): string =>
  `photographs/${id}-${size}${size === 'original' ? '' : '.jpg'}`

/** Which photograph a file inside is; null for any other file. */
export const photoOfName = (name: string): { readonly id: string; readonly size: KeptSize } | null => {
  const match = /^photographs\/([0-9a-f]{64})-(?:(large|small)\.jpg|(original))$/.exec(name)
  return match === null ? null : { id: match[1], size: (match[2] ?? match[3]) as KeptSize }
}
