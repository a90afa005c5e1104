import type { Kysely, Transaction } from 'kysely'
import type { AppendOutcome } from '../../bench/ports.ts'
import type { Tables } from '../sql/tables.ts'
import { writeEntries } from '../sql/entries.ts'
import { startMachine } from '../sql/notes.ts'
import { personRow } from '../sql/people-store.ts'
import type { KeptRecord } from './records.ts'

/**
 * Writes everything into an empty store, in the order given, and makes what lists and books need of it: all of it or, when a write
 * fails, nothing. Throws where a log is there already.
 */
export const writeEverything = async (db: Kysely<Tables>, records: AsyncIterable<KeptRecord>): Promise<void> => {
  await db.transaction().execute(async (transaction) => {
    for await (const record of records) await writeRecord(transaction, record)
  })
}

const writeRecord = async (db: Transaction<Tables>, record: KeptRecord): Promise<void> => {
  switch (record.kind) {
    case 'machine':
      return written(record.id, await startMachine(db, record.bench, record.id, record.notes))
    case 'log': {
      const { logKind: kind, id, entries } = record
      return written(id, await writeEntries(db, record.bench, { kind, id, expectedVersion: 0, entries }))
    }
    case 'person':
      await db.insertInto('person').values(personRow(record.person)).execute()
      return
    case 'blueprint':
      await db
        .insertInto('own_blueprint')
        .values({ id: record.own.id, saved_at: record.own.savedAt, content: JSON.stringify(record.own) })
        .execute()
      return
    case 'settings':
      await db
        .insertInto('settings_change')
        .values({ at: record.change.at, content: JSON.stringify(record.change.change) })
        .execute()
  }
}

const written = (id: string, outcome: AppendOutcome): void => {
  if (outcome.kind !== 'appended') throw new Error(`“${id}” could not be written: ${outcome.kind}`)
}
