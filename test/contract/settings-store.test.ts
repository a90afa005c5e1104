import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { valueOf } from '../../src/base/result.ts'
import { memorySettingsStore } from '../../src/store/memory/settings-store.ts'
import { openStore, type OpenStore } from '../../src/store/sqlite/open-store.ts'
import { settingsStoreContract } from './settings-store.ts'

settingsStoreContract('memory', false, () => {
  const store = memorySettingsStore()
  return Promise.resolve({ store, again: () => Promise.resolve(store), close: () => Promise.resolve() })
})

settingsStoreContract('SQLite', true, async () => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-store-'))
  let current: OpenStore = valueOf(await openStore({ folder }))
  return {
    store: current.settings,
    again: async () => {
      await current.close()
      current = valueOf(await openStore({ folder }))
      return current.settings
    },
    close: async () => {
      await current.close()
      await rm(folder, { recursive: true })
    },
  }
})
