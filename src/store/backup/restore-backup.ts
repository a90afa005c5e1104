import { randomUUID } from 'node:crypto'
import { rm } from 'node:fs/promises'
import { dirname, join, resolve } from 'node:path'
import type { Kysely } from 'kysely'
import type { Problem } from '../../base/problem.ts'
import { ok, refused, valueOf, type Result } from '../../base/result.ts'
import type { KeptRecord } from '../copy/records.ts'
import { writeEverything } from '../copy/write-everything.ts'
import { originalPath } from '../files/original-store.ts'
import { photoPath } from '../files/photo-store.ts'
import { sumOfFile, writeSums } from '../files/photo-sums.ts'
import { makeFolder, writeStretches, writeWhole } from '../files/whole-file.ts'
import type { Tables } from '../sql/tables.ts'
import { backupFault } from './backup-fault.ts'
import { checkBackup, recordsIn } from './check-backup.ts'
import { giveName, isEmptyFolder, notEmpty } from './empty-folder.ts'
import { photoOfName, type Counts } from './manifest.ts'
import { kinds } from './record-lines.ts'
import { openZip, type OpenZip } from './zip-reader.ts'

/** Opens an empty store in a folder that is there. */
export type OpenEmpty = (
  folder: string,
) => Promise<Result<{ readonly db: Kysely<Tables>; readonly close: () => Promise<void> }>>

export type Restored = { readonly counts: Counts; readonly madeAt: string; readonly lost: readonly Problem[] }

/**
 * Makes a data folder from a backup. The backup is read whole first; what is made of it stands beside the folder until it is whole and is
 * then given the folder's name, so that nothing is ever half restored.
 * Refused when the folder holds anything, when the backup is damaged, or when there cannot be written.
 */
export const restoreBackup = async (file: string, folder: string, open: OpenEmpty): Promise<Result<Restored>> => {
  const target = resolve(folder)
  if (!(await isEmptyFolder(target))) return refused(notEmpty(folder))
  const checked = await checkBackup(file)
  const lost = checked.problems.filter(({ code }) => code === 'photograph-missing')
  if (checked.counts === null || checked.madeAt === null || lost.length < checked.problems.length) {
    return refused(...checked.problems)
  }
  const beside = `${target}.${randomUUID()}.part`
  try {
    await makeFolder(beside)
    await unpack(file, beside, open)
    await giveName(beside, target)
    return ok({ counts: checked.counts, madeAt: checked.madeAt, lost })
  } catch (fault) {
    await rm(beside, { recursive: true, force: true }).catch(() => undefined)
    const known = backupFault(folder, fault)
    return refused({ ...known, what: known.what.replace('backup was written', 'bench was restored') })
  }
}

const unpack = async (file: string, folder: string, open: OpenEmpty): Promise<void> => {
  const zip = await openZip(file)
  try {
    await unpackPhotos(zip, folder)
    const store = valueOf(await open(folder))
    try {
      await writeEverything(store.db, records(zip))
    } finally {
      await store.close()
    }
  } finally {
    await zip.close()
  }
}

async function* records(zip: OpenZip): AsyncGenerator<KeptRecord> {
  for (const kind of kinds) {
    for await (const record of recordsIn(zip, kind)) yield valueOf(record)
  }
}

const unpackPhotos = async (zip: OpenZip, folder: string): Promise<void> => {
  const paths = new Map<string, string[]>()
  for (const { name, read } of zip.files) {
    const photo = photoOfName(name)
    if (photo === null) continue
    const { id, size } = photo
    const path =
      size === 'original' ? originalPath(join(folder, 'originals'), id)! : photoPath(join(folder, 'photos'), id, size)!
    await makeFolder(dirname(path))
    await writeWhole(path, (handle) => writeStretches(handle, read()))
    if (size !== 'original') paths.set(id, [...(paths.get(id) ?? []), path])
  }
  for (const both of paths.values()) {
    await writeSums(await Promise.all(both.map(async (path) => ({ path, sha256: await sumOfFile(path) }))))
  }
}
