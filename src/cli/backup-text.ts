import { problemText, type Problem } from '../base/problem.ts'
import type { MadeBackup } from '../store/backup/make-backup.ts'
import type { Counts } from '../store/backup/manifest.ts'
import type { Restored } from '../store/backup/restore-backup.ts'

const bytesPerMegabyte = 1_000_000

/** What a backup holds, in words. */
const countsText = (counts: Counts): string =>
  [
    counted(counts.machines, 'machine'),
    counted(counts.notes, 'note'),
    counted(counts.entries, 'entry', 'entries'),
    counted(counts.blueprints, 'blueprint'),
    counted(counts.photographs, 'photograph'),
  ].join(', ')

const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`

export const backupLines = ({ file, bytes, counts, lost }: MadeBackup): readonly string[] => [
  `Written and read back: ${file}, ${(bytes / bytesPerMegabyte).toFixed(1)} MB`,
  countsText(counts),
  ...lost.map(problemText),
]

export const restoredLines = ({ counts, madeAt, lost }: Restored, where: string): readonly string[] => [
  `Restored into ${where}, as it was at ${madeAt}`,
  countsText(counts),
  ...(counts.people > 0 ? ['People need new passphrases: thrum people'] : []),
  ...lost.map(problemText),
]

/** What was found, then where backups are made by themselves. */
export const verifyLines = (
  { counts, problems }: { readonly counts: Counts | null; readonly problems: readonly Problem[] },
  backups: { readonly folder: string; readonly files: readonly string[] } | null,
): readonly string[] => [
  ...(problems.length === 0 ? ['Whole'] : [`Damaged in ${counted(problems.length, 'place')}:`]),
  ...problems.map(problemText),
  ...(counts === null ? [] : [countsText(counts)]),
  ...(backups === null ? [] : [backupsText(backups)]),
]

const backupsText = ({ folder, files }: { readonly folder: string; readonly files: readonly string[] }): string => {
  const newest = files.at(-1)
  return newest === undefined
    ? `No backups made by themselves in ${folder}; “thrum serve” makes one a day`
    : `${counted(files.length, 'backup')} made by themselves in ${folder}, the newest ${newest}`
}
