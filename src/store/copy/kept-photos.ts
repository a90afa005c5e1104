import { createReadStream } from 'node:fs'
import { readdir, stat } from 'node:fs/promises'
import { join } from 'node:path'
import type { Kysely } from 'kysely'
import type { PhotoSize } from '../../bench/photos/photo-ports.ts'
import { writtenSum } from '../files/photo-sums.ts'
import type { Tables } from '../sql/tables.ts'

/** A photograph as it is looked at, as it stands in lists, and, where that is kept, the file as it was sent. */
export type KeptSize = PhotoSize | 'original'

/** One file of a photograph, wherever it lies. */
export type KeptPhoto = {
  readonly id: string
  readonly size: KeptSize
  readonly bytes: number
  readonly read: () => AsyncIterable<Uint8Array>
  /** SHA-256 of it as it was written; null for photographs from before that was kept. */
  readonly sha256: string | null
}

/** All photographs of a folder, by their ids; none where there is no folder. Files still being written are not among them. */
export async function* photosInFolder(folder: string): AsyncGenerator<KeptPhoto> {
  for (const inside of await namesIn(folder)) {
    if (!/^[0-9a-f]{2}$/.test(inside)) continue
    for (const name of await namesIn(join(folder, inside))) {
      const match = /^([0-9a-f]{64})(\.small)?\.jpg$/.exec(name)
      if (match === null) continue
      const path = join(folder, inside, name)
      const { size: bytes } = await stat(path)
      const size = match[2] === undefined ? 'large' : 'small'
      yield { id: match[1], size, bytes, read: () => createReadStream(path), sha256: await writtenSum(path) }
    }
  }
}

/** All files as they were sent that a folder keeps. Each is named after its own sum. */
export async function* originalsInFolder(folder: string): AsyncGenerator<KeptPhoto> {
  for (const inside of await namesIn(folder)) {
    if (!/^[0-9a-f]{2}$/.test(inside)) continue
    for (const id of await namesIn(join(folder, inside))) {
      if (!/^[0-9a-f]{64}$/.test(id)) continue
      const path = join(folder, inside, id)
      const { size: bytes } = await stat(path)
      yield { id, size: 'original', bytes, read: () => createReadStream(path), sha256: id }
    }
  }
}

const namesIn = async (folder: string): Promise<readonly string[]> => {
  try {
    return (await readdir(folder)).sort()
  } catch (fault) {
    if (fault instanceof Error && 'code' in fault && fault.code === 'ENOENT') return []
    throw fault
  }
}

/** All photographs of a database that keeps them, by their ids. */
export async function* photosInDatabase(db: Kysely<Tables>): AsyncGenerator<KeptPhoto> {
  const all = await db.selectFrom('photo').select(['id', 'size', 'sha256']).orderBy('id').orderBy('size').execute()
  for (const { id, size, sha256 } of all) {
    const { bytes } = await db
      .selectFrom('photo')
      .select('bytes')
      .where('id', '=', id)
      .where('size', '=', size)
      .executeTakeFirstOrThrow()
    yield { id, size: size as PhotoSize, bytes: bytes.length, read: () => once(bytes), sha256 }
  }
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield await Promise.resolve(bytes)
}
