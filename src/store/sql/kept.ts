import { setTimeout } from 'node:timers/promises'
import type { Kysely } from 'kysely'
import type { Problem } from '../../base/problem.ts'
import { postgresFailures } from '../postgres/failures.ts'
import { sqliteFailures } from '../sqlite/failures.ts'
import type { Failures } from './failures.ts'
import type { Tables } from './tables.ts'
import { isPostgres } from './words.ts'

/** How often to try while others write, and the pause between; on SQLite each try itself waits for a moment too. */
const mostTurns = 20
const pauseMs = 50

export type NotKept = { readonly kind: 'not-kept'; readonly problem: Problem }

/** Writes, trying again while others write, and turns the failures a bench can do something about into an outcome. */
export const kept = async <Outcome>(db: Kysely<Tables>, write: () => Promise<Outcome>): Promise<Outcome | NotKept> => {
  const failures = isPostgres(db) ? postgresFailures : sqliteFailures
  for (let turn = 1; ; turn++) {
    try {
      return await write()
    } catch (fault) {
      if (!failures.passes(fault) || turn === mostTurns) return notKept(failures, fault)
      // Not all at the same moment again: those that stood in each other's way would meet once more.
      await setTimeout(pauseMs * (isPostgres(db) ? Math.random() : 1))
    }
  }
}

const notKept = ({ problemOf }: Failures, fault: unknown): NotKept => {
  const known = problemOf(fault)
  if (known === null) throw fault
  return { kind: 'not-kept', problem: known }
}
