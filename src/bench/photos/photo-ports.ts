import type { Problem } from '../../base/problem.ts'

/** A photograph as it is kept: found by what was sent, so that the same one is kept once. */
export type Photo = {
  /** SHA-256 of what was sent, 64 hexadecimal digits. */
  readonly id: string
  readonly widthPx: number
  readonly heightPx: number
  readonly bytes: number
}

export type PhotoSize = 'large' | 'small'

/** What became of an image handed in. Nothing is kept unless it is `kept`. */
export type PhotoOutcome =
  | { readonly kind: 'kept'; readonly photo: Photo; readonly isNew: boolean }
  /** It is no photograph that can be kept, and why. */
  | { readonly kind: 'refused'; readonly problem: Problem }
  /** It could not be written: the disk is full or cannot be written. */
  | { readonly kind: 'not-kept'; readonly problem: Problem }

/** Where photographs are kept: small ones for lists and large ones to look at, without the place and the device they were taken with. */
export type PhotoStore = {
  readonly put: (bytes: Uint8Array) => Promise<PhotoOutcome>
  /** The file of a photograph, JPEG; null when there is none of this id. */
  readonly get: (id: string, size: PhotoSize) => Promise<Uint8Array | null>
  readonly has: (id: string) => Promise<boolean>
}
