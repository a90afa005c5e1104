import { canonical } from '../../bench/canonical.ts'
import type { OwnBlueprint } from '../../bench/own-blueprint.ts'
import type { BlueprintStore } from '../../bench/ports.ts'

/** The port of blueprints of one's own in memory: forgotten when the program ends. For tests. */
export const memoryBlueprintStore = (): BlueprintStore => {
  const kept = new Map<string, OwnBlueprint>()
  return {
    list: () => Promise.resolve([...kept.values()]),
    get: (id) => Promise.resolve(kept.get(id) ?? null),
    put: (own) => {
      const there = kept.get(own.id)
      if (there !== undefined) return Promise.resolve({ kind: canonical(there) === canonical(own) ? 'kept' : 'taken' })
      kept.set(own.id, own)
      return Promise.resolve({ kind: 'kept' })
    },
  }
}
