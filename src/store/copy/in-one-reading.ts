import type { Kysely } from 'kysely'
import type { Tables } from '../sqlite/database.ts'

/**
 * Reads in one transaction, so that all that is read is of one moment, whatever is written meanwhile. On SQLite hand it a connection that
 * reads only: there a transaction of the program's own connection takes the write lock.
 */
export const inOneReading = async <T>(
  db: Kysely<Tables>,
  work: (transaction: Kysely<Tables>) => Promise<T>,
): Promise<T> => db.transaction().setIsolationLevel('repeatable read').setAccessMode('read only').execute(work)
