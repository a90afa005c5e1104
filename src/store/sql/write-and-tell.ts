import type { Kysely, Transaction } from 'kysely'
import type { Announcer, LogName } from './announcer.ts'
import { kept, type NotKept } from './kept.ts'
import type { Tables } from './tables.ts'
import { wordsOf } from './words.ts'

/** Writes to these logs in one transaction, and has those told who listen. */
export const writeAndTell = async <Outcome extends { readonly kind: string }>(
  db: Kysely<Tables>,
  announcer: Announcer,
  logs: readonly LogName[],
  work: (transaction: Transaction<Tables>) => Promise<Outcome>,
): Promise<Outcome | NotKept> => {
  const outcome = await kept(db, () =>
    db.transaction().execute(async (transaction) => {
      if (logs.length > 1) await takeAll(transaction, logs)
      const done = await work(transaction)
      if (done.kind === 'appended') await announcer.inside(transaction, logs)
      return done
    }),
  )
  if (outcome.kind === 'appended') await announcer.after(logs)
  return outcome
}

/** Takes the rows of several logs for this transaction, always in the same order: of two that need the same ones, one waits for the other. */
const takeAll = async (db: Transaction<Tables>, logs: readonly LogName[]): Promise<void> => {
  const { kind, forUpdate } = wordsOf(db)
  if (kind === 'sqlite') return
  const machines = logs.filter((log) => log.kind === 'machine').map(({ id }) => id)
  if (machines.length > 0) {
    await db.selectFrom('machine').select('id').where('id', 'in', machines).orderBy('id').modifyEnd(forUpdate).execute()
  }
  const others = logs.filter((log) => log.kind !== 'machine')
  if (others.length === 0) return
  await db
    .selectFrom('log')
    .select('id')
    .where((where) =>
      where(
        where.refTuple('kind', 'id'),
        'in',
        others.map((log) => where.tuple(log.kind, log.id)),
      ),
    )
    .orderBy('kind')
    .orderBy('id')
    .modifyEnd(forUpdate)
    .execute()
}
