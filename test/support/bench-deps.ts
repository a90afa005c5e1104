import { createHash } from 'node:crypto'
import type { ImportDeps } from '../../src/bench/books/import/import-books.ts'
import type { BenchStores } from '../../src/bench/ports.ts'
import { memorySettingsStore } from '../../src/store/memory/settings-store.ts'
import { storesOf } from './stores.ts'
import { tinyBlueprint } from './tiny-blueprint.ts'

/** What the use-cases of the books need: the tiny blueprint, ids counted up, a clock that stands until it is set. */
export const benchDeps = (
  stores?: BenchStores,
): { readonly deps: ImportDeps; readonly setDay: (day: string) => void } => {
  let at = '2026-03-14T10:00:00.000Z'
  let ids = 0
  const deps: ImportDeps = {
    ...storesOf(stores),
    settings: memorySettingsStore(),
    bench: 'own',
    blueprintById: (id) => (id === tinyBlueprint.id ? tinyBlueprint : undefined),
    blueprintIds: () => [tinyBlueprint.id],
    now: () => at,
    newId: () => `id-${++ids}`,
    hash: (text) => createHash('sha256').update(text).digest('hex'),
  }
  return { deps, setDay: (day) => (at = `${day}T10:00:00.000Z`) }
}
