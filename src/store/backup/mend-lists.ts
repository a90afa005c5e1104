import type { Kysely } from 'kysely'
import type { LogKind } from '../../bench/logs/entry.ts'
import { projectMachineLog, projectOtherLog } from '../sql/project.ts'
import type { Tables } from '../sql/tables.ts'

/** Makes what lists and books keep of every log again from its notes: all of it, or nothing when that fails. Notes are left as they are. */
export const mendLists = (db: Kysely<Tables>): Promise<void> =>
  db.transaction().execute(async (transaction) => {
    await transaction.deleteFrom('book_line').execute()
    await transaction.deleteFrom('book_month').execute()
    const machines = await transaction.selectFrom('machine').select('id').orderBy('rank').execute()
    for (const { id } of machines) await projectMachineLog(transaction, id)
    const logs = await transaction.selectFrom('log').select(['kind', 'id']).orderBy('rank').execute()
    for (const { kind, id } of logs) await projectOtherLog(transaction, kind as LogKind, id)
  })
