import type { KeptRecord } from '../copy/records.ts'
import type { Counts } from './manifest.ts'

/** Counts what goes by, and notes the photographs that notes name. */
export type Tally = {
  readonly record: (record: KeptRecord) => void
  readonly photograph: () => void
  readonly counts: () => Counts
  readonly named: () => ReadonlySet<string>
}

export const makeTally = (): Tally => {
  const counts = { machines: 0, notes: 0, logs: 0, entries: 0, people: 0, blueprints: 0, settings: 0, photographs: 0 }
  const named = new Set<string>()
  return {
    record: (record) => {
      switch (record.kind) {
        case 'machine':
          counts.machines++
          counts.notes += record.notes.length
          for (const { content } of record.notes) if (content.kind === 'photo') named.add(content.photo)
          return
        case 'log':
          counts.logs++
          counts.entries += record.entries.length
          return
        case 'person':
          counts.people++
          return
        case 'blueprint':
          counts.blueprints++
          return
        case 'settings':
          counts.settings++
      }
    },
    photograph: () => void counts.photographs++,
    counts: () => ({ ...counts }),
    named: () => named,
  }
}
