import { keptPhotoPx, mostPhotoPixels } from '../../base/photo-limits.ts'

const quality = 0.85
/** How much of the end of a file is looked at for its end mark. */
const tailBytes = 64 * 1024

export type Smaller =
  { readonly kind: 'ok'; readonly blob: Blob } | { readonly kind: 'too-many-pixels'; readonly megapixels: number }

/**
 * A photograph as small as the bench would make it, so that many can wait on a device. Where the browser cannot, or where the file is
 * not surely a whole photograph, it is left as it is: what it is decides the bench, and a broken one must not be made to look whole.
 */
export const madeSmaller = async (file: Blob): Promise<Smaller> => {
  if (!(await isWholePhotograph(file))) return { kind: 'ok', blob: file }
  const bitmap = await createImageBitmap(file).catch(() => null)
  if (bitmap === null) return { kind: 'ok', blob: file }
  try {
    const pixels = bitmap.width * bitmap.height
    if (pixels > mostPhotoPixels) return { kind: 'too-many-pixels', megapixels: Math.round(pixels / 1e6) }
    const scale = Math.min(1, keptPhotoPx / Math.max(bitmap.width, bitmap.height))
    const made = scale === 1 ? null : await drawn(bitmap, scale)
    return { kind: 'ok', blob: made === null || made.size >= file.size ? file : made }
  } finally {
    bitmap.close()
  }
}

const drawn = (bitmap: ImageBitmap, scale: number): Promise<Blob | null> => {
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(bitmap.width * scale))
  canvas.height = Math.max(1, Math.round(bitmap.height * scale))
  const context = canvas.getContext('2d')
  if (context === null) return Promise.resolve(null)
  context.imageSmoothingQuality = 'high'
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality))
}

/** By its content a JPEG or PNG that has its end, or a WebP. */
const isWholePhotograph = async (file: Blob): Promise<boolean> => {
  const head = await bytesOf(file.slice(0, 12))
  const tail = await bytesOf(file.slice(Math.max(0, file.size - tailBytes)))
  if (begins(head, [0xff, 0xd8, 0xff])) return holds(tail, [0xff, 0xd9])
  if (begins(head, [0x89, 0x50, 0x4e, 0x47])) return holds(tail, [0x49, 0x45, 0x4e, 0x44])
  return begins(head, [0x52, 0x49, 0x46, 0x46]) && begins(head.subarray(8), [0x57, 0x45, 0x42, 0x50])
}

const bytesOf = async (part: Blob): Promise<Uint8Array> => new Uint8Array(await part.arrayBuffer())

const begins = (bytes: Uint8Array, start: readonly number[]): boolean => start.every((byte, at) => bytes[at] === byte)

const holds = (bytes: Uint8Array, wanted: readonly number[]): boolean => {
  for (let at = bytes.length - wanted.length; at >= 0; at--) {
    if (wanted.every((byte, step) => bytes[at + step] === byte)) return true
  }
  return false
}
