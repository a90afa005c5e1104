import type { Kysely } from 'kysely'
import { problem, type Problem } from '../../base/problem.ts'
import { inOneReading } from '../copy/in-one-reading.ts'
import type { KeptPhoto } from '../copy/kept-photos.ts'
import type { Tables } from '../sql/tables.ts'
import { checkLogs } from './check-logs.ts'
import { monthProblems } from './check-months.ts'
import { checkPhotos } from './check-photos.ts'
import { checkSingles } from './check-singles.ts'
import type { Counts } from './manifest.ts'
import { makeTally } from './tally.ts'

export type CheckedStore = { readonly counts: Counts; readonly problems: readonly Problem[] }

/** What is looked at. `db` reads only (see `inOneReading`); `integrity` is what the database says of its own files, line by line. */
export type StoreToCheck = {
  readonly db: Kysely<Tables>
  readonly photos: () => AsyncIterable<KeptPhoto>
  readonly integrity: (db: Kysely<Tables>) => Promise<readonly string[]>
}

/**
 * Reads a store whole: the database by its own means, every row by its schema, the order and number of every log's entries, what lists and
 * books keep against what follows from the logs, and the photographs. Names what is damaged; changes nothing.
 */
export const checkStore = async ({ db, photos, integrity }: StoreToCheck): Promise<CheckedStore> => {
  const tally = makeTally()
  const problems: Problem[] = []
  try {
    for (const line of await integrity(db)) problems.push(damagedStore(line))
    await inOneReading(db, async (transaction) => {
      problems.push(...(await checkSingles(transaction, tally)))
      for await (const found of checkLogs(transaction, tally)) problems.push(found)
      problems.push(...(await monthProblems(transaction)))
    })
  } catch (fault) {
    problems.push(damagedStore(fault instanceof Error ? fault.message : String(fault)))
  }
  for await (const found of checkPhotos(photos(), tally)) problems.push(found)
  return { counts: tally.counts(), problems }
}

const damagedStore = (line: string): Problem =>
  problem('damaged-store', 'the database', line, 'Restore the newest backup into an empty folder')
