import { createHash } from 'node:crypto'
import type { Problem } from '../../base/problem.ts'
import type { KeptPhoto } from '../copy/kept-photos.ts'
import { isWholePhoto } from '../files/photo-image.ts'
import { photoDamaged, photoMissing } from './photo-problems.ts'
import type { Tally } from './tally.ts'

/** Photographs that are no longer as they were written, and those that notes name and that are not there. */
export async function* checkPhotos(photos: AsyncIterable<KeptPhoto>, tally: Tally): AsyncGenerator<Problem> {
  const there = new Set<string>()
  for await (const photo of photos) {
    if (photo.size === 'large') {
      there.add(photo.id)
      tally.photograph()
    }
    if (!(await isAsWritten(photo))) yield photoDamaged(photo.id, photo.size)
  }
  for (const id of tally.named()) if (!there.has(id)) yield photoMissing(id)
}

/** Photographs from before sums were kept can be looked at only. */
const isAsWritten = async ({ read, sha256 }: KeptPhoto): Promise<boolean> => {
  const hash = createHash('sha256')
  const chunks: Uint8Array[] = []
  for await (const chunk of read()) {
    hash.update(chunk)
    if (sha256 === null) chunks.push(chunk)
  }
  return sha256 === null ? isWholePhoto(Buffer.concat(chunks)) : hash.digest('hex') === sha256
}
