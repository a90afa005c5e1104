import type { Kysely } from 'kysely'
import { readKind } from '../copy/read-everything.ts'
import type { KeptRecord } from '../copy/records.ts'
import type { Tables } from '../sql/tables.ts'
import { linesOf } from './record-lines.ts'
import type { Tally } from './tally.ts'

/** The lines of all records of one kind, counted on their way. */
export async function* linesOfKind(db: Kysely<Tables>, kind: KeptRecord['kind'], tally: Tally): AsyncGenerator<string> {
  for await (const record of readKind[kind](db)) {
    const lines = linesOf(record)
    // What is written to no file, such as a passphrase, is not counted either.
    if (lines.length > 0) tally.record(record)
    yield* lines
  }
}
