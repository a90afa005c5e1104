import { setTimeout } from 'node:timers/promises'
import { Migrator, sql, type Kysely, type Migration } from 'kysely'
import { problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import type { Tables } from './tables.ts'
import { isPostgres } from './words.ts'

/**
 * Brings the tables up to date by steps that are taken by name in order. Refused when they were written by a newer program.
 * @param where the folder or the address of the store, as it stands in a refusal
 */
export const migrateWith = async (
  db: Kysely<Tables>,
  where: string,
  migrations: Readonly<Record<string, Migration>>,
): Promise<Result<null>> => {
  const known = new Set(Object.keys(migrations))
  const made = await appliedNames(db)
  if (made.some((name) => !known.has(name))) {
    return refused(
      problem(
        'newer-store',
        where,
        'The store there was written by a newer version of Thrum',
        'Use that version or a later one',
      ),
    )
  }
  // Kysely looks at every table before it looks for steps; a store that is up to date needs none of that.
  if (made.length === known.size) return ok(null)
  const migrator = new Migrator({ db, provider: { getMigrations: () => Promise.resolve({ ...migrations }) } })
  const error = await latest(migrator, triesAtStart)
  if (error === undefined) return ok(null)
  const why = error instanceof Error ? error.message : 'for a reason not given'
  return refused(
    problem(
      'store-not-updated',
      where,
      `The store could not be brought up to date: ${why}`,
      'Try again, or put a backup in its place',
    ),
  )
}

/** Another start of the program may be at the same steps at the same moment; the one that comes late finds them made. */
const triesAtStart = 4
const pauseMs = 100

const latest = async (migrator: Migrator, tries: number): Promise<unknown> => {
  const { error } = await migrator.migrateToLatest()
  if (error === undefined || tries === 1) return error
  await setTimeout(pauseMs)
  return latest(migrator, tries - 1)
}

/** Names of the steps that were made in this store; none for a new one. */
const appliedNames = async (db: Kysely<Tables>): Promise<readonly string[]> => {
  const there = isPostgres(db)
    ? sql<{ name: string }>`select 'kysely_migration' as name where to_regclass('kysely_migration') is not null`
    : sql<{ name: string }>`select name from sqlite_master where name = 'kysely_migration'`
  if ((await there.execute(db)).rows.length === 0) return []
  const made = await sql<{ name: string }>`select name from kysely_migration`.execute(db)
  return made.rows.map((row) => row.name)
}
