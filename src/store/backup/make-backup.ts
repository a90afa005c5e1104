import { dirname } from 'node:path'
import type { Kysely } from 'kysely'
import type { Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { inOneReading } from '../copy/in-one-reading.ts'
import type { KeptPhoto } from '../copy/kept-photos.ts'
import { makeFolder, writeWhole } from '../files/whole-file.ts'
import type { Tables } from '../sql/tables.ts'
import { backupFault } from './backup-fault.ts'
import { checkBackup } from './check-backup.ts'
import { manifestName, photoName, readmeName, type Counts, type Manifest } from './manifest.ts'
import { photoDamaged } from './photo-problems.ts'
import { readmeText } from './readme-text.ts'
import { fileOfKind, kinds } from './record-lines.ts'
import { makeTally } from './tally.ts'
import { linesOfKind } from './lines-of-kind.ts'
import { bytesOfLines, once } from './text-lines.ts'
import { writeZip, type FileSum, type ZipSink } from './zip-writer.ts'

/** What a backup is made of. `db` is a connection that reads only (see `inOneReading`). */
export type BackupSource = {
  readonly db: Kysely<Tables>
  readonly photos: () => AsyncIterable<KeptPhoto>
  readonly madeAt: string
}

export type MadeBackup = {
  readonly file: string
  readonly bytes: number
  readonly counts: Counts
  /** Photographs that the store had lost before, or that are no longer as they were written. */
  readonly lost: readonly Problem[]
}

/**
 * Writes everything a store holds, of one moment, and all photographs to one file. It is written beside, read back whole and only then
 * given its name. Photographs are kept before the notes that name them, so all that the notes of that moment name are there.
 * Refused when the file cannot be written or the store is damaged; what stood there before stays then.
 */
export const makeBackup = async (source: BackupSource, file: string): Promise<Result<MadeBackup>> => {
  const beside = `${file}.part`
  const lost: Problem[] = []
  let counts: Counts | null = null
  let bytes = 0
  try {
    await makeFolder(dirname(file))
    await writeWhole(
      file,
      async (handle) => {
        await writeZip(handle, async (sink) => void lost.push(...(await fill(sink, source))))
        const back = await readBack(beside)
        counts = back.counts
        lost.push(...back.missing)
        bytes = (await handle.stat()).size
      },
      beside,
    )
    return ok({ file, bytes, counts: counts!, lost })
  } catch (fault) {
    return fault instanceof NotWhole ? refused(...fault.problems) : refused(backupFault(file, fault))
  }
}

/** What was read back is not what was to be written. */
class NotWhole extends Error {
  readonly problems: readonly Problem[]
  constructor(problems: readonly Problem[]) {
    super('the backup is not whole')
    this.problems = problems
  }
}

const readBack = async (file: string): Promise<{ readonly counts: Counts; readonly missing: readonly Problem[] }> => {
  const { counts, problems } = await checkBackup(file)
  const missing = problems.filter(({ code }) => code === 'photograph-missing')
  if (counts === null || missing.length < problems.length) throw new NotWhole(problems)
  return { counts, missing }
}

/** Fills the backup. Gives back the photographs that are no longer as they were written. */
const fill = async (sink: ZipSink, { db, photos, madeAt }: BackupSource): Promise<readonly Problem[]> => {
  const tally = makeTally()
  const files: FileSum[] = [await sink.add(readmeName, bytesOfLines(once(readmeText('backup'))), 'packed')]
  await inOneReading(db, async (transaction) => {
    for (const kind of kinds) {
      files.push(await sink.add(fileOfKind[kind], bytesOfLines(linesOfKind(transaction, kind, tally)), 'packed'))
    }
  })
  const damaged: Problem[] = []
  for await (const { id, size, read, sha256 } of photos()) {
    const sum = await sink.add(photoName(id, size), read(), 'as-it-is')
    if (sha256 !== null && sha256 !== sum.sha256) damaged.push(photoDamaged(id, size))
    files.push(sum)
    if (size === 'large') tally.photograph()
  }
  const manifest: Manifest = { format: 'thrum-backup-1', madeAt, counts: tally.counts(), files }
  await sink.add(manifestName, bytesOfLines(once(JSON.stringify(manifest, null, 1))), 'packed')
  return damaged
}
