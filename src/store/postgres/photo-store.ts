import type { Kysely } from 'kysely'
import { problem } from '../../base/problem.ts'
import type { PhotoOutcome, PhotoSize, PhotoStore } from '../../bench/photos/photo-ports.ts'
import { makeImage, type MadeImage } from '../files/photo-image.ts'
import { sumOfBytes } from '../files/photo-sums.ts'
import { kept } from '../sql/kept.ts'
import type { Tables } from '../sql/tables.ts'

/** The port of photographs in the database, so that servers that share nothing else have the same ones: two rows each, large and small. */
export const postgresPhotoStore = (db: Kysely<Tables>): PhotoStore => ({
  put: (bytes) => putPhoto(db, bytes),
  get: (id, size) => readPhoto(db, id, size),
  has: async (id) => (await readSize(db, id)) !== null,
})

const readPhoto = async (db: Kysely<Tables>, id: string, size: PhotoSize): Promise<Uint8Array | null> => {
  if (!isId(id)) return null
  const row = await db
    .selectFrom('photo')
    .select('bytes')
    .where('id', '=', id)
    .where('size', '=', size)
    .executeTakeFirst()
  return row?.bytes ?? null
}

/** A hash; any other name is that of no photograph, and may hold what PostgreSQL takes for no text. */
const isId = (id: string): boolean => /^[0-9a-f]{64}$/.test(id)

/** Whether there is one; both of its rows came in together. */
const readSize = async (db: Kysely<Tables>, id: string): Promise<PhotoSize | null> => {
  if (!isId(id)) return null
  const row = await db.selectFrom('photo').select('size').where('id', '=', id).executeTakeFirst()
  return row === undefined ? null : (row.size as PhotoSize)
}

const putPhoto = async (db: Kysely<Tables>, bytes: Uint8Array): Promise<PhotoOutcome> => {
  const id = sumOfBytes(bytes)
  const made = await makeImage(bytes)
  if (made.kind === 'refused') return { kind: 'refused', problem: made.problems[0] ?? unreadable }
  const { large, widthPx, heightPx } = made.value
  const outcome = await kept(db, async () => ({ kind: 'kept' as const, isNew: await writeMade(db, id, made.value) }))
  return outcome.kind === 'kept'
    ? { ...outcome, photo: { id, widthPx, heightPx, bytes: large.length } }
    : { kind: 'not-kept', problem: outcome.problem }
}

/** Writes both sizes of a photograph, or none of them; one that is there already stays as it is. Gives whether it is new. */
export const writeMade = (
  db: Kysely<Tables>,
  id: string,
  { large, small }: Pick<MadeImage, 'large' | 'small'>,
): Promise<boolean> =>
  db.transaction().execute(async (transaction) => {
    const rows = [
      { id, size: 'large', bytes: large, sha256: sumOfBytes(large) },
      { id, size: 'small', bytes: small, sha256: sumOfBytes(small) },
    ]
    const [put] = await transaction
      .insertInto('photo')
      .values(rows)
      .onConflict((conflict) => conflict.columns(['id', 'size']).doNothing())
      .execute()
    return (put?.numInsertedOrUpdatedRows ?? 0n) > 0n
  })

const unreadable = problem('not-a-photograph', 'photo', 'This is no photograph that can be read', 'Send another one')
