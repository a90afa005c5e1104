import { join } from 'node:path'
import type { Kysely } from 'kysely'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { openToRead, type ReadableStore } from '../backup/open-to-read.ts'
import { inOneReading } from '../copy/in-one-reading.ts'
import { readEverything } from '../copy/read-everything.ts'
import { writeEverything } from '../copy/write-everything.ts'
import { openBenchStore, type BenchStore, type StorePlace } from '../open-bench-store.ts'
import { shownAddress } from '../postgres/open-problem.ts'
import type { Tables } from '../sql/tables.ts'
import { contentSum, type ContentSum } from './content-sum.ts'
import { copyPhotos, missingPhotos } from './copy-photos.ts'

/** What was moved, counted: records of the store by kind, and files of photographs. */
export type Moved = { readonly counts: ContentSum['counts']; readonly photos: number; readonly to: string }

/**
 * Copies everything from one store into an empty one, either of them in a folder or in a database, and compares both afterwards. The first
 * stays as it was. What is written there meanwhile is not moved: stop the program first.
 * Refused when either cannot be opened, when the second holds anything, and when they are not alike in the end.
 */
export const moveBench = async (from: StorePlace, to: StorePlace): Promise<Result<Moved>> => {
  const source = await openToRead(from)
  if (source.kind === 'refused') return source
  try {
    const target = await openBenchStore(to)
    if (target.kind === 'refused') return target
    try {
      const where = to.database === undefined ? to.folder : shownAddress(to.database)
      if (!(await isEmpty(target.value.db))) return refused(notEmpty(where))
      return await moveInto(source.value, target.value, to, where)
    } finally {
      await target.value.close()
    }
  } finally {
    await source.value.close()
  }
}

const moveInto = async (
  source: ReadableStore,
  target: BenchStore,
  to: StorePlace,
  where: string,
): Promise<Result<Moved>> => {
  // Photographs first: a machine never names one that is not there yet.
  const originals = join(to.folder, 'originals')
  const photos = await copyPhotos(source.photos(), target, originals)
  if (photos.kind === 'refused') return photos
  const before = await inOneReading(source.db, async (reading) => {
    await writeEverything(target.db, readEverything(reading))
    return contentSum(readEverything(reading))
  })
  const after = await contentSum(readEverything(target.db))
  const missing = await missingPhotos(source.photos(), target, originals)
  if (after.sha256 !== before.sha256 || missing > 0) return refused(notAlike(where, missing))
  return ok({ counts: before.counts, photos: photos.value, to: where })
}

/** Photographs alone do no harm: they are called by their content, and a move that broke off left them there. */
const holding = ['machine', 'log', 'own_blueprint', 'settings_change', 'person'] as const

/** Whether a store holds nothing but photographs. */
export const isEmpty = async (db: Kysely<Tables>): Promise<boolean> => {
  for (const table of holding) {
    if ((await db.selectFrom(table).select(db.fn.countAll<number>().as('count')).executeTakeFirstOrThrow()).count > 0)
      return false
  }
  return true
}

export const notEmpty = (where: string): Problem =>
  problem(
    'not-empty',
    where,
    'There is something in this store already, and a bench is moved into an empty one only',
    'Name an empty folder or a new database',
  )

const notAlike = (where: string, missing: number): Problem =>
  problem(
    'not-alike',
    where,
    missing > 0
      ? `${missing} files of photographs are not there as they were in the first store`
      : 'What is there now is not the same as in the first store',
    'Empty it and move again, while nothing else writes to either; go on with the first until then',
  )
