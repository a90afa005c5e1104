import { largestPhotoBytes } from '../../base/photo-limits.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { waitingNotes, type WaitingFile } from '../outbox/outbox.ts'
import { madeSmaller } from './made-smaller.ts'
import { putInBox, sweepBox } from './photo-box.ts'
import { named } from './send-photo.ts'

/**
 * Keeps a photograph on this device until the bench takes it, made smaller unless the file as it is is wanted. Refused by name where it is
 * too large for the bench, or where the browser has no room: said at once, while it is still among the pictures of the device.
 */
export const keepHere = async (file: File, asItIs: boolean): Promise<Result<WaitingFile>> => {
  if (file.size > largestPhotoBytes) return refused(named(file.name, tooLarge))
  const smaller = await madeSmaller(file)
  if (smaller.kind === 'too-many-pixels') return refused(named(file.name, tooManyPixels(smaller.megapixels)))
  const blob = asItIs ? file : smaller.blob
  try {
    const bytes = await blob.arrayBuffer()
    const key = await keyOf(bytes)
    // A copy: a file of the device may be moved or changed before it is sent.
    await putInBox(key, new Blob([bytes], { type: blob.type }))
    void navigator.storage?.persist?.()
    void sweepBox(new Set([key, ...waitingNotes().flatMap(({ file: one }) => (one === undefined ? [] : [one.key]))]))
    return ok({ key, name: file.name })
  } catch {
    return refused(named(file.name, noRoom))
  }
}

/** The name the bench will give it, SHA-256 of what is sent; where a page may not reckon that (no https), one drawn by lot. */
const keyOf = async (bytes: ArrayBuffer): Promise<string> => {
  const subtle = crypto.subtle as SubtleCrypto | undefined
  const digits =
    subtle === undefined ? crypto.getRandomValues(new Uint8Array(32)) : await subtle.digest('SHA-256', bytes)
  return [...new Uint8Array(digits)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

const tooLarge = problem(
  'photograph-too-large',
  'photo',
  'This file is larger than 30 megabytes',
  'Send a photograph, not a film, or set the camera to a smaller size',
)
const tooManyPixels = (megapixels: number): Problem =>
  problem(
    'too-many-pixels',
    'photo',
    `This photograph has ${megapixels} megapixels, and 50 is the most that the bench can decode`,
    'Set the camera to a smaller size, or add a smaller copy',
  )
const noRoom = problem(
  'no-room-here',
  'photo',
  'The bench does not answer, and this browser has no room to keep it until then',
  'It is still among the pictures of this device: make room, or add it again when the bench answers. What waits already is kept',
)
