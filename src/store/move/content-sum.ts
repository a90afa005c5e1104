import { createHash } from 'node:crypto'
import { canonical } from '../../bench/canonical.ts'
import type { KeptRecord } from '../copy/records.ts'

/** What a store holds, as one sum and counted by kind. Two stores with the same content have the same sum, whatever keeps them. */
export type ContentSum = {
  readonly sha256: string
  readonly counts: Readonly<Partial<Record<KeptRecord['kind'], number>>>
}

export const contentSum = async (records: AsyncIterable<KeptRecord>): Promise<ContentSum> => {
  const hash = createHash('sha256')
  const counts: Partial<Record<KeptRecord['kind'], number>> = {}
  for await (const record of records) {
    hash.update(canonical(record)).update('\n')
    counts[record.kind] = (counts[record.kind] ?? 0) + 1
  }
  return { sha256: hash.digest('hex'), counts }
}
