import { randomUUID } from 'node:crypto'
import { rm } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { ok, refused, type Result } from '../../base/result.ts'
import { inOneReading } from '../copy/in-one-reading.ts'
import { makeFolder, writeStretches, writeWhole } from '../files/whole-file.ts'
import { backupFault } from './backup-fault.ts'
import { giveName, isEmptyFolder, notEmpty } from './empty-folder.ts'
import { linesOfKind } from './lines-of-kind.ts'
import type { BackupSource } from './make-backup.ts'
import { photoName, readmeName, type Counts } from './manifest.ts'
import { readmeText } from './readme-text.ts'
import { fileOfKind, kinds } from './record-lines.ts'
import { makeTally } from './tally.ts'
import { bytesOfLines, bytesOfText, once } from './text-lines.ts'

/** A table of the export: its name and its text as it comes. */
export type ExportTable = { readonly name: string; readonly text: AsyncIterable<string> }

/**
 * Writes everything a store holds into a folder as open files: lines of JSON, tables, photographs, and a word on what is what.
 * Refused when the folder holds anything or cannot be written; nothing is left behind then.
 */
export const exportFolder = async (
  source: Omit<BackupSource, 'madeAt'>,
  tables: readonly ExportTable[],
  folder: string,
): Promise<Result<{ readonly folder: string; readonly counts: Counts }>> => {
  const target = resolve(folder)
  if (!(await isEmptyFolder(target))) return refused(notEmpty(folder))
  const beside = `${target}.${randomUUID()}.part`
  try {
    await makeFolder(join(beside, 'photographs'))
    const counts = await fill(source, tables, beside)
    await giveName(beside, target)
    return ok({ folder, counts })
  } catch (fault) {
    await rm(beside, { recursive: true, force: true }).catch(() => undefined)
    return refused(backupFault(folder, fault))
  }
}

const fill = async (
  { db, photos }: Omit<BackupSource, 'madeAt'>,
  tables: readonly ExportTable[],
  folder: string,
): Promise<Counts> => {
  const tally = makeTally()
  const put = (name: string, chunks: AsyncIterable<Uint8Array>): Promise<void> =>
    writeWhole(join(folder, name), (file) => writeStretches(file, chunks))
  await put(readmeName, bytesOfLines(once(readmeText('export'))))
  await inOneReading(db, async (transaction) => {
    for (const kind of kinds) await put(fileOfKind[kind], bytesOfLines(linesOfKind(transaction, kind, tally)))
  })
  for (const { name, text } of tables) await put(name, bytesOfText(text))
  for await (const { id, size, read } of photos()) {
    await put(photoName(id, size), read())
    if (size === 'large') tally.photograph()
  }
  return tally.counts()
}
