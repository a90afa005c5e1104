import { readdir, rm, statfs } from 'node:fs/promises'
import { join } from 'node:path'
import { problem, type Problem } from '../../base/problem.ts'
import { refused, type Result } from '../../base/result.ts'
import { makeFolder } from '../files/whole-file.ts'
import type { MadeBackup } from './make-backup.ts'

/** Where and how many backups are made by themselves. */
export type AutomaticBackups = { readonly folder: string; readonly keep: number }

/** What became of the backup of the day. */
export type AutomaticOutcome =
  | { readonly kind: 'made'; readonly backup: MadeBackup; readonly removed: readonly string[] }
  /** Nothing was written since the newest one. */
  | { readonly kind: 'unchanged'; readonly newest: string }
  /** The newest one is younger than a day. */
  | { readonly kind: 'not-yet'; readonly newest: string }
  | { readonly kind: 'failed'; readonly problems: readonly Problem[] }

const namePattern = /^thrum-\d{4}-\d\d-\d\dT\d\d-\d\d-\d\d\.zip$/
const hoursBetween = 24
const msPerHour = 3_600_000

/** The backups that were made by themselves in a folder, the oldest first; none where there is no folder. Files of other names are left alone. */
export const automaticBackupsIn = async (folder: string): Promise<readonly string[]> =>
  (await readdir(folder).catch(() => [])).filter((name) => namePattern.test(name)).sort()

export type AutomaticDeps = {
  readonly now: string
  /** Whether anything was written since this one was made. */
  readonly isChangedSince: (file: string) => Promise<boolean>
  readonly make: (file: string) => Promise<Result<MadeBackup>>
  /** How many bytes a backup may take at most, about. */
  readonly mostBytes: () => Promise<number>
}

/**
 * Makes a backup when the newest one is a day old and something was written since. The oldest ones above `keep` are removed only after the
 * new one was written, read back and found whole, and never while photographs are lost that an older one may hold. Never throws.
 */
export const backUpWhenDue = async (
  { folder, keep }: AutomaticBackups,
  deps: AutomaticDeps,
): Promise<AutomaticOutcome> => {
  try {
    const there = await automaticBackupsIn(folder)
    const newest = there.at(-1)
    if (newest !== undefined) {
      const age = Date.parse(deps.now) - Date.parse(timeOf(newest))
      // A clock that was set back makes the newest one lie ahead; that must not keep a new one from being made.
      if (age >= 0 && age < hoursBetween * msPerHour) return { kind: 'not-yet', newest }
      if (!(await deps.isChangedSince(join(folder, newest)))) return { kind: 'unchanged', newest }
    }
    const made = await makeWithRoom(folder, deps)
    if (made.kind === 'refused') return { kind: 'failed', problems: made.problems }
    const removed = made.value.lost.length > 0 ? [] : await removeOldest(folder, keep)
    return { kind: 'made', backup: made.value, removed }
  } catch (fault) {
    return { kind: 'failed', problems: [problem('not-backed-up', folder, messageOf(fault), 'Look at the folder')] }
  }
}

const messageOf = (fault: unknown): string => (fault instanceof Error ? fault.message : String(fault))

/** Only where it leaves as much room again: a backup must never take the room that the next note needs. */
const makeWithRoom = async (folder: string, deps: AutomaticDeps): Promise<Result<MadeBackup>> => {
  await makeFolder(folder)
  const { bavail, bsize } = await statfs(folder)
  const needed = 2 * (await deps.mostBytes())
  if (bavail * bsize < needed) {
    return refused(
      problem(
        'no-room',
        folder,
        `A backup may take ${megabytes(needed / 2)} MB, and only ${megabytes(bavail * bsize)} MB are free`,
        'Make room, keep fewer with --keep, or name another disk with --backups',
      ),
    )
  }
  return deps.make(join(folder, nameAt(deps.now)))
}

const bytesPerMegabyte = 1_000_000
const megabytes = (bytes: number): string => (bytes / bytesPerMegabyte).toFixed(0)

/** `2026-03-14T10:00:00.000Z` → `thrum-2026-03-14T10-00-00.zip`; no system minds such a name, and names sort by time. */
const nameAt = (now: string): string => `thrum-${now.slice(0, 19).replaceAll(':', '-')}.zip`
const timeOf = (name: string): string =>
  name.slice('thrum-'.length, -'.zip'.length).replace(/T(\d\d)-(\d\d)-(\d\d)$/, 'T$1:$2:$3.000Z')

const removeOldest = async (folder: string, keep: number): Promise<readonly string[]> => {
  const there = await automaticBackupsIn(folder)
  const gone = there.slice(0, Math.max(0, there.length - keep))
  for (const name of gone) await rm(join(folder, name), { force: true })
  return gone
}
