import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { valueOf } from '../../src/base/result.ts'
import { memoryBlueprintStore } from '../../src/store/memory/blueprint-store.ts'
import { openStore, type OpenStore } from '../../src/store/sqlite/open-store.ts'
import { blueprintStoreContract } from './blueprint-store.ts'

blueprintStoreContract('memory', false, () => {
  const store = memoryBlueprintStore()
  return Promise.resolve({ store, again: () => Promise.resolve(store), close: () => Promise.resolve() })
})

blueprintStoreContract('SQLite', true, async () => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-store-'))
  let current: OpenStore = valueOf(await openStore({ folder }))
  return {
    store: current.blueprints,
    again: async () => {
      await current.close()
      current = valueOf(await openStore({ folder }))
      return current.blueprints
    },
    close: async () => {
      await current.close()
      await rm(folder, { recursive: true })
    },
  }
})
