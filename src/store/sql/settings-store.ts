import type { Kysely } from 'kysely'
import type { SettingsStore } from '../../bench/ports.ts'
import { keptChangeSchema, type KeptChange } from '../../bench/settings-change.ts'
import type { Tables } from './tables.ts'
import { kept } from './kept.ts'

/** The port of settings. */
export const sqlSettingsStore = (db: Kysely<Tables>): SettingsStore => ({
  changes: async () => (await db.selectFrom('settings_change').selectAll().orderBy('rank').execute()).map(changeOf),
  add: ({ at, change }) =>
    kept(db, async () => {
      await db
        .insertInto('settings_change')
        .values({ at, content: JSON.stringify(change) })
        .execute()
      return { kind: 'kept' as const }
    }),
})

/** What the store holds went through the same schema on its way in; a row that does not pass was not written by this program. */
const changeOf = ({ at, content }: { readonly at: string; readonly content: string }): KeptChange =>
  keptChangeSchema.parse({ at, change: JSON.parse(content) as unknown })
