import type { Kysely } from 'kysely'
import type { Tables } from './tables.ts'
import { projectMachineLog } from './project.ts'

/** Machines at a time, so that another program gets its turn in between. */
const atOnce = 100

/** Makes what lists and books need of machines that were written before there was any such thing. An index leads to them. */
export const catchUp = async (db: Kysely<Tables>): Promise<void> => {
  let after = 0
  for (;;) {
    const behind = await db
      .selectFrom('machine')
      .select(['id', 'rank'])
      .where('summary', 'is', null)
      .where('rank', '>', after)
      .orderBy('rank')
      .limit(atOnce)
      .execute()
    if (behind.length === 0) return
    await db.transaction().execute(async (transaction) => {
      for (const { id } of behind) await projectMachineLog(transaction, id)
    })
    after = behind.at(-1)?.rank ?? after
  }
}
