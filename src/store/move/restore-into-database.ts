import { randomUUID } from 'node:crypto'
import { rm } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { restoreBackup, type Restored } from '../backup/restore-backup.ts'
import { openBenchStore, type BenchStore, type StorePlace } from '../open-bench-store.ts'
import { postgresFailures } from '../postgres/failures.ts'
import { shownAddress } from '../postgres/open-problem.ts'
import { openStore } from '../sqlite/open-store.ts'
import { isEmpty, moveBench, notEmpty } from './move-bench.ts'

type DatabasePlace = StorePlace & { readonly database: string }

/**
 * Puts a backup into an empty database: it is made into a folder of its own inside the data folder, moved from there, compared, and the
 * folder is removed again. Where that fails the database is as empty as before; photographs that were to lie in a folder may stay there,
 * called by their content.
 * Refused when the database cannot be opened or holds anything, when the backup is damaged, and when either cannot be written.
 */
export const restoreIntoDatabase = async (
  file: string,
  to: DatabasePlace,
): Promise<Result<Restored & { readonly to: string }>> => {
  const before = await withStore(to, photosThere)
  if (before.kind === 'refused') return before
  const beside = join(resolve(to.folder), `restore-${randomUUID()}`)
  try {
    const restored = await restoreBackup(file, beside, (folder) => openStore({ folder }))
    if (restored.kind === 'refused') return restored
    const moved = await moving(beside, to)
    if (moved.kind === 'ok') return ok({ ...restored.value, to: moved.value.to })
    await withStore(to, (store) => removeNewPhotos(store, before.value)).catch(() => undefined)
    return moved
  } finally {
    await rm(beside, { recursive: true, force: true }).catch(() => undefined)
  }
}

const withStore = async <T>(
  place: DatabasePlace,
  work: (store: BenchStore) => Promise<Result<T>>,
): Promise<Result<T>> => {
  const opened = await openBenchStore(place)
  if (opened.kind === 'refused') return opened
  try {
    if (!(await isEmpty(opened.value.db))) return refused(notEmpty(shownAddress(place.database)))
    return await work(opened.value)
  } finally {
    await opened.value.close()
  }
}

/** A database that breaks off in the middle is a refusal like any other. */
const moving = async (from: string, to: DatabasePlace): ReturnType<typeof moveBench> => {
  try {
    return await moveBench({ folder: from }, to)
  } catch (fault) {
    const where = shownAddress(to.database)
    const known = postgresFailures.problemOf(fault)
    return refused(known === null ? notRestored(where, fault) : { ...known, where })
  }
}

const notRestored = (where: string, fault: unknown): Problem =>
  problem(
    'not-restored',
    where,
    `No bench was restored: ${fault instanceof Error ? fault.message : String(fault)}`,
    'See to the database, then restore again',
  )

const photosThere = async ({ db, photoPlace }: BenchStore): Promise<Result<readonly string[]>> => {
  if (photoPlace.kind === 'folder') return ok([])
  return ok((await db.selectFrom('photo').select('id').distinct().execute()).map(({ id }) => id))
}

/** Notes go in all at once or not at all, photographs one by one. */
const removeNewPhotos = async (store: BenchStore, before: readonly string[]): Promise<Result<null>> => {
  const there = await photosThere(store)
  if (there.kind === 'refused') return there
  for (const id of there.value.filter((one) => !before.includes(one))) {
    await store.db.deleteFrom('photo').where('id', '=', id).execute()
  }
  return ok(null)
}
