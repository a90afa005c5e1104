import { ok, type Result } from '../../base/result.ts'
import type { BenchStores, BlueprintStore, SettingsStore } from '../../bench/ports.ts'
import { sqliteBlueprintStore } from './blueprint-store.ts'
import { sqliteBookStore } from './book-store.ts'
import { catchUp } from './catch-up.ts'
import { openDatabase } from './database.ts'
import { migrate } from './migrations.ts'
import { sqliteLogStore } from './log-store.ts'
import { sqliteNoteStore } from './note-store.ts'
import { sqliteSettingsStore } from './settings-store.ts'

export type OpenStore = BenchStores & {
  readonly blueprints: BlueprintStore
  readonly settings: SettingsStore
  /** Lets go of the file. Nothing may be asked of the store afterwards. */
  readonly close: () => Promise<void>
}

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
  return ok({
    notes: sqliteNoteStore(db),
    blueprints: sqliteBlueprintStore(db),
    settings: sqliteSettingsStore(db),
    logs: sqliteLogStore(db),
    books: sqliteBookStore(db),
    close: () => db.destroy(),
  })
}
