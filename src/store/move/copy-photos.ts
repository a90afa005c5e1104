import { ok, refused, type Result } from '../../base/result.ts'
import type { PhotoSize } from '../../bench/photos/photo-ports.ts'
import type { KeptPhoto } from '../copy/kept-photos.ts'
import { fileOriginalStore } from '../files/original-store.ts'
import { writeMade as writeFiles } from '../files/photo-store.ts'
import { sumOfBytes } from '../files/photo-sums.ts'
import type { BenchStore } from '../open-bench-store.ts'
import { writeMade as writeRows } from '../postgres/photo-store.ts'

type Target = Pick<BenchStore, 'photos' | 'photoPlace' | 'db'>

/** Copies photographs as they are, without making them anew, and files as they were sent. Gives how many files there were. */
export const copyPhotos = async (
  photos: AsyncIterable<KeptPhoto>,
  target: Target,
  originals: string,
): Promise<Result<number>> => {
  const sizes = new Map<string, Map<PhotoSize, Uint8Array>>()
  let count = 0
  for await (const photo of photos) {
    count++
    const { id, size } = photo
    const bytes = await allOf(photo)
    if (size === 'original') {
      const wrong = await fileOriginalStore(originals).keep(id, bytes)
      if (wrong !== null) return refused(wrong)
      continue
    }
    const both = (sizes.get(id) ?? new Map<PhotoSize, Uint8Array>()).set(size, bytes)
    sizes.set(id, both)
    const [large, small] = [both.get('large'), both.get('small')]
    if (large === undefined || small === undefined) continue
    sizes.delete(id)
    if (!(await target.photos.has(id))) await write(target, id, large, small)
  }
  return ok(count)
}

const write = async ({ photoPlace, db }: Target, id: string, large: Uint8Array, small: Uint8Array): Promise<void> => {
  if (photoPlace.kind === 'database') await writeRows(db, id, { large, small })
  else await writeFiles(photoPlace.folder, id, { large, small })
}

/** How many of the files are not there, byte for byte. */
export const missingPhotos = async (
  photos: AsyncIterable<KeptPhoto>,
  target: Target,
  originals: string,
): Promise<number> => {
  let missing = 0
  for await (const photo of photos) {
    const { id, size } = photo
    const there = await (size === 'original' ? fileOriginalStore(originals).get(id) : target.photos.get(id, size))
    if (there === null || sumOfBytes(there) !== sumOfBytes(await allOf(photo))) missing++
  }
  return missing
}

const allOf = async ({ read }: KeptPhoto): Promise<Uint8Array> => {
  const chunks: Uint8Array[] = []
  for await (const chunk of read()) chunks.push(chunk)
  return Buffer.concat(chunks)
}
