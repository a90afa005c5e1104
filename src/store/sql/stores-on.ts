import type { Kysely } from 'kysely'
import type { PeopleStore } from '../../bench/people/people-ports.ts'
import type { BenchStores, BlueprintStore, Changes, SettingsStore } from '../../bench/ports.ts'
import type { Announcer } from './announcer.ts'
import { sqlBlueprintStore } from './blueprint-store.ts'
import { sqlBookStore } from './book-store.ts'
import { makeKnownLogs } from './known-logs.ts'
import { sqlLogStore } from './log-store.ts'
import { sqlNoteStore } from './note-store.ts'
import { sqlPeopleStore } from './people-store.ts'
import { sqlSettingsStore } from './settings-store.ts'
import type { Tables } from './tables.ts'

export type OpenStore = BenchStores & {
  readonly blueprints: BlueprintStore
  readonly settings: SettingsStore
  readonly people: PeopleStore
  readonly changes: Changes
  /** The database itself, for what copies a store as a whole. */
  readonly db: Kysely<Tables>
  /** Lets go of the file or the server. Nothing may be asked of the store afterwards. */
  readonly close: () => Promise<void>
}

/** The ports on a database whose tables are up to date. */
export const storesOn = (db: Kysely<Tables>, announcer: Announcer): Omit<OpenStore, 'changes' | 'close'> => {
  const known = makeKnownLogs()
  return {
    notes: sqlNoteStore(db, announcer, known),
    blueprints: sqlBlueprintStore(db),
    settings: sqlSettingsStore(db),
    people: sqlPeopleStore(db),
    logs: sqlLogStore(db, announcer, known),
    books: sqlBookStore(db),
    db,
  }
}
