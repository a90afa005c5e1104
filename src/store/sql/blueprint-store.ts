import type { Kysely } from 'kysely'
import { canonical } from '../../bench/canonical.ts'
import { ownBlueprintSchema, type OwnBlueprint } from '../../bench/own-blueprint.ts'
import type { BlueprintStore, PutOutcome } from '../../bench/ports.ts'
import type { Tables } from './tables.ts'
import { kept } from './kept.ts'

/** The port of blueprints of one's own. */
export const sqlBlueprintStore = (db: Kysely<Tables>): BlueprintStore => ({
  list: async () => (await db.selectFrom('own_blueprint').selectAll().orderBy('rank').execute()).map(ownOf),
  get: (id) => readOwn(db, id),
  put: (own) => kept(db, () => db.transaction().execute((transaction) => putOwn(transaction, own))),
})

type Row = { readonly id: string; readonly saved_at: string; readonly content: string }

/** What the store holds went through the same schema on its way in; a row that does not pass was not written by this program. */
const ownOf = ({ content }: Row): OwnBlueprint => ownBlueprintSchema.parse(JSON.parse(content))

const readOwn = async (db: Kysely<Tables>, id: string): Promise<OwnBlueprint | null> => {
  const row = await db.selectFrom('own_blueprint').selectAll().where('id', '=', id).executeTakeFirst()
  return row === undefined ? null : ownOf(row)
}

const putOwn = async (db: Kysely<Tables>, own: OwnBlueprint): Promise<PutOutcome> => {
  const there = await readOwn(db, own.id)
  if (there !== null) return { kind: canonical(there) === canonical(own) ? 'kept' : 'taken' }
  await db
    .insertInto('own_blueprint')
    .values({ id: own.id, saved_at: own.savedAt, content: JSON.stringify(own) })
    .execute()
  return { kind: 'kept' }
}
