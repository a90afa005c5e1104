import { stat } from 'node:fs/promises'
import { join } from 'node:path'
import { problemText } from '../base/problem.ts'
import { refused } from '../base/result.ts'
import { canonical } from '../bench/canonical.ts'
import { backUpWhenDue, type AutomaticBackups, type AutomaticOutcome } from '../store/backup/automatic.ts'
import { countsIn } from '../store/backup/check-backup.ts'
import { countsNow } from '../store/backup/counts-now.ts'
import { makeBackup } from '../store/backup/make-backup.ts'
import { readableBeside, type ReadableStore } from '../store/backup/open-to-read.ts'
import type { BenchStore, StorePlace } from '../store/open-bench-store.ts'

/** Looks soon after the start, for a bench that is served an hour a day too, and then every hour. */
const firstLookMs = 60_000
const lookEveryMs = 3_600_000

/**
 * Makes a backup a day while the program serves. What goes wrong is told by a line and tried again at the next look; the program goes on.
 * @returns what stops it, fulfilled when a backup that was begun is done
 */
export const backUpDaily = (
  place: StorePlace,
  store: BenchStore,
  backups: AutomaticBackups,
  tell: (line: string) => void,
): (() => Promise<void>) => {
  let looking: Promise<void> = Promise.resolve()
  const look = (): void =>
    void (looking = looking.then(() => backUpOnce(place, store, backups)).then((outcome) => report(outcome, tell)))
  const first = setTimeout(look, firstLookMs).unref()
  const every = setInterval(look, lookEveryMs).unref()
  return async () => {
    clearTimeout(first)
    clearInterval(every)
    await looking
  }
}

/** One look: makes the backup if it is due. Never throws. */
export const backUpOnce = async (
  place: StorePlace,
  store: BenchStore,
  backups: AutomaticBackups,
  now: string = new Date().toISOString(),
): Promise<AutomaticOutcome> => {
  const opened = readableBeside(place, { ...store, close: () => Promise.resolve() })
  if (opened.kind === 'refused') return { kind: 'failed', problems: opened.problems }
  const readable = opened.value
  try {
    return await backUpWhenDue(backups, {
      now,
      isChangedSince: (file) => isChangedSince(readable, file),
      make: (file) =>
        makeBackup({ ...readable, madeAt: now }, file).catch((fault: unknown) => refused(unexpected(fault))),
      mostBytes: () => bytesOf(place, readable),
    })
  } finally {
    await readable.close()
  }
}

const unexpected = (fault: unknown) => ({
  code: 'not-backed-up',
  where: '',
  what: fault instanceof Error ? fault.message : String(fault),
  mend: '“thrum verify” says whether the store is damaged',
})

const isChangedSince = async ({ db }: ReadableStore, file: string): Promise<boolean> => {
  const counts = await countsIn(file)
  if (counts === null) return true
  const { photographs: _named, ...before } = counts
  return canonical(before) !== canonical(await countsNow(db))
}

const bytesOf = async (place: StorePlace, { photos }: ReadableStore): Promise<number> => {
  let bytes = 0
  for (const name of ['bench.sqlite', 'bench.sqlite-wal']) {
    bytes += await stat(join(place.folder, name))
      .then(({ size }) => size)
      .catch(() => 0)
  }
  for await (const photo of photos()) bytes += photo.bytes
  return bytes
}

const report = (outcome: AutomaticOutcome, tell: (line: string) => void): void => {
  if (outcome.kind === 'failed') tell(`No backup was made: ${outcome.problems.map(problemText).join(' ')}`)
  if (outcome.kind !== 'made') return
  tell(`Backed up: ${outcome.backup.file}`)
  outcome.backup.lost.forEach((one) => tell(`Backed up without: ${problemText(one)}`))
}
