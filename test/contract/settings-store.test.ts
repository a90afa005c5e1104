import { memorySettingsStore } from '../../src/store/memory/settings-store.ts'
import { databasesHere } from '../support/open-stores.ts'
import { settingsStoreContract } from './settings-store.ts'

settingsStoreContract('memory', false, () => {
  const store = memorySettingsStore()
  return Promise.resolve({ store, again: () => Promise.resolve(store), close: () => Promise.resolve() })
})

for (const [name, open] of databasesHere) {
  settingsStoreContract(name, true, async () => {
    const { store, again, close } = await open()
    return { store: store.settings, again: async () => (await again()).settings, close }
  })
}
