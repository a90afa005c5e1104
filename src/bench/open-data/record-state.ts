import type { EntryOf } from '../logs/entry.ts'
import { standingEntries } from '../logs/standing-entries.ts'
import type { RecordContent, RepairRecord } from './fields.ts'

/** A repair record that was taken in from a file. It stands for itself: no price, no rate and no sum is drawn from it. */
export type RecordState = {
  readonly id: string
  readonly at: string
  readonly struck: boolean
  readonly record: RepairRecord
}

export const foldRecord = (entries: readonly EntryOf<RecordContent>[]): RecordState => {
  const first = entries.find(({ content }) => content.kind === 'kept')
  if (first?.content.kind !== 'kept') throw new Error('the log of a repair record has no first entry')
  const struck = standingEntries(entries).length === 0
  return { id: first.log, at: first.at, struck, record: first.content.record }
}
