import { stat } from 'node:fs/promises'
import { join } from 'node:path'
import type { Kysely } from 'kysely'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { originalsInFolder, photosInDatabase, photosInFolder, type KeptPhoto } from '../copy/kept-photos.ts'
import { openBenchStore, type BenchStore, type StorePlace } from '../open-bench-store.ts'
import type { Tables } from '../sql/tables.ts'
import { sqliteIntegrity } from '../sqlite/integrity.ts'
import { openForReading } from '../sqlite/open-for-reading.ts'

/** A store to be read as a whole, beside whatever works with it. */
export type ReadableStore = {
  readonly db: Kysely<Tables>
  readonly photos: () => AsyncIterable<KeptPhoto>
  readonly integrity: (db: Kysely<Tables>) => Promise<readonly string[]>
  readonly close: () => Promise<void>
}

/**
 * Opens a store to read it as a whole. Its tables are brought up to date first, as any command does.
 * Refused when there is none in the folder, and as opening a store is.
 */
export const openToRead = async (place: StorePlace): Promise<Result<ReadableStore>> => {
  const { folder, database } = place
  if (database === undefined && !(await isThere(join(folder, 'bench.sqlite')))) return refused(noStore(folder))
  const opened = await opening(place)
  if (opened.kind === 'refused') return opened
  if (database !== undefined) return readableBeside(place, opened.value)
  await opened.value.close()
  return readableBeside(place, opened.value)
}

/**
 * The store of a place once more, only to read, beside the connection that works with it. Closing it closes a database elsewhere only
 * where nothing else works with it.
 */
export const readableBeside = (
  place: StorePlace,
  store: Pick<BenchStore, 'db' | 'photoPlace' | 'close'>,
): Result<ReadableStore> => {
  const photos = () => allPhotos(place, store)
  if (place.database !== undefined) {
    return ok({ db: store.db, photos, integrity: () => Promise.resolve([]), close: store.close })
  }
  const reading = openForReading(place.folder)
  if (reading.kind === 'refused') return reading
  return ok({ db: reading.value, photos, integrity: sqliteIntegrity, close: () => reading.value.destroy() })
}

async function* allPhotos(
  { folder }: StorePlace,
  { photoPlace, db }: Pick<BenchStore, 'db' | 'photoPlace'>,
): AsyncGenerator<KeptPhoto> {
  yield* photoPlace.kind === 'database' ? photosInDatabase(db) : photosInFolder(photoPlace.folder)
  yield* originalsInFolder(join(folder, 'originals'))
}

/** A file so damaged that it cannot even be opened is said to be, like any other. */
const opening = async (place: StorePlace): Promise<Result<BenchStore>> => {
  try {
    return await openBenchStore(place)
  } catch (fault) {
    const why = fault instanceof Error ? fault.message : String(fault)
    return refused(
      problem('damaged-store', place.folder, `The store cannot be opened: ${why}`, 'Restore the newest backup'),
    )
  }
}

const isThere = (path: string): Promise<boolean> =>
  stat(path)
    .then(() => true)
    .catch(() => false)

const noStore = (folder: string): Problem =>
  problem('no-store', folder, 'There is no store there', 'Name the data folder with --data')
