import { ok, type Result } from '../../base/result.ts'
import { catchUp } from '../sql/catch-up.ts'
import { storesOn, type OpenStore } from '../sql/stores-on.ts'
import { sqliteChanges } from './changes.ts'
import { openDatabase } from './database.ts'
import { migrate } from './migrations.ts'

export type { OpenStore } from '../sql/stores-on.ts'

/**
 * Opens the store in a folder, making both if need be, and brings its tables up to date.
 * Refused when the folder cannot be written, the file is not a store, or a newer version wrote it.
 */
export const openStore = async ({ folder }: { readonly folder: string }): Promise<Result<OpenStore>> => {
  const opened = await openDatabase(folder, 'bench.sqlite')
  if (opened.kind === 'refused') return opened
  const db = opened.value
  const migrated = await migrate(db, folder)
  if (migrated.kind === 'refused') {
    await db.destroy()
    return migrated
  }
  await catchUp(db)
  const { changes, announcer } = sqliteChanges(db)
  return ok({ ...storesOn(db, announcer), changes, close: () => db.destroy() })
}
