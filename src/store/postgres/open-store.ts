import type { Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { catchUp } from '../sql/catch-up.ts'
import { storesOn, type OpenStore } from '../sql/stores-on.ts'
import { postgresAnnouncer, postgresChanges } from './changes.ts'
import { openDatabase } from './database.ts'
import { migrate } from './migrations.ts'
import { openProblem, shownAddress } from './open-problem.ts'

/** An open store, and what is amiss with its server that does not keep it from working. */
export type OpenPostgresStore = OpenStore & { readonly warnings: readonly Problem[] }

/**
 * Opens the store in a database of a server and brings its tables up to date.
 * Refused when nobody answers there, the server does not let this program in or make tables, or a newer version wrote them.
 */
export const openStore = async ({ url }: { readonly url: string }): Promise<Result<OpenPostgresStore>> => {
  const opened = await openDatabase(url)
  if (opened.kind === 'refused') return opened
  const { db, warnings } = opened.value
  try {
    const migrated = await migrate(db, shownAddress(url))
    if (migrated.kind === 'refused') {
      await db.destroy()
      return migrated
    }
    await catchUp(db)
  } catch (fault) {
    await db.destroy()
    return refused(openProblem(url, fault))
  }
  const { changes, close } = postgresChanges(url)
  return ok({
    ...storesOn(db, postgresAnnouncer),
    changes,
    warnings,
    close: async () => {
      await close()
      await db.destroy()
    },
  })
}
