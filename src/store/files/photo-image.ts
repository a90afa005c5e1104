import sharp from 'sharp'
import { keptPhotoPx, mostPhotoPixels } from '../../base/photo-limits.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'

/** Longest side of what stands in lists, pixels. */
const smallPx = 480
const quality = { large: 82, small: 72 } as const

/** Forms of images that phones and browsers send. Drawings and films are none of them, whatever their name says. */
const formats: readonly string[] = ['jpeg', 'png', 'webp', 'avif', 'heif']

export type MadeImage = {
  readonly large: Uint8Array
  readonly small: Uint8Array
  readonly widthPx: number
  readonly heightPx: number
}

/**
 * Makes a photograph from whatever was sent: looked at by its content, turned upright, made smaller, written anew as JPEG. Writing it anew
 * leaves out where and with what it was taken, and whatever else was hidden in the file.
 * @returns refused with what is wrong where it is no image, a broken one, or too large to decode
 */
export const makeImage = async (bytes: Uint8Array): Promise<Result<MadeImage>> => {
  const seen = await look(bytes)
  if (seen.kind === 'refused') return seen
  try {
    const upright = sharp(bytes, { limitInputPixels: mostPhotoPixels, failOn: 'error' }).rotate()
    const large = await upright
      .clone()
      .resize(keptPhotoPx, keptPhotoPx, { fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: quality.large, mozjpeg: true })
      .toBuffer({ resolveWithObject: true })
    const small = await sharp(large.data)
      .resize(smallPx, smallPx, { fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: quality.small })
      .toBuffer()
    return ok({ large: large.data, small, widthPx: large.info.width, heightPx: large.info.height })
  } catch {
    return refused(broken)
  }
}

const look = async (bytes: Uint8Array): Promise<Result<null>> => {
  if (!beginsAsPhotograph(bytes)) return refused(notAnImage)
  const seen = await sharp(bytes, { limitInputPixels: false })
    .metadata()
    .catch(() => null)
  if (seen === null || !formats.includes(seen.format)) return refused(notAnImage)
  const pixels = (seen.width ?? 0) * (seen.height ?? 0)
  if (pixels > mostPhotoPixels) return refused(tooManyPixels(Math.round(pixels / 1e6)))
  return ok(null)
}

/** How files of photographs begin. A drawing is text that can name other files or unfold without end, so it is not even looked at. */
const beginsAsPhotograph = (bytes: Uint8Array): boolean => {
  const head = Buffer.from(bytes.subarray(0, 12)).toString('latin1')
  return (
    head.startsWith('\xff\xd8\xff') ||
    head.startsWith('\x89PNG\r\n\x1a\n') ||
    (head.startsWith('RIFF') && head.slice(8) === 'WEBP') ||
    head.slice(4, 8) === 'ftyp'
  )
}

const notAnImage = problem(
  'not-a-photograph',
  'photo',
  'This is no photograph that can be read: by its content it is neither JPEG, PNG, WebP nor AVIF',
  'Send a photograph; a film or a drawing cannot be kept here. A phone that saves HEIC can be set to the most compatible form',
)
const broken = problem(
  'broken-photograph',
  'photo',
  'This photograph is broken: it ends too soon or holds what cannot be decoded',
  'Take it again, or send it from where it was first saved',
)
const tooManyPixels = (megapixels: number): Problem =>
  problem(
    'too-many-pixels',
    'photo',
    `This photograph has ${megapixels} megapixels, and 50 is the most that can be decoded here`,
    'Set the camera to a smaller size, or send a smaller copy',
  )

/** Whether a photograph that was kept can be decoded to its end. */
export const isWholePhoto = async (bytes: Uint8Array): Promise<boolean> => {
  try {
    await sharp(bytes, { limitInputPixels: mostPhotoPixels, failOn: 'warning' }).raw().toBuffer()
    return true
  } catch {
    return false
  }
}
