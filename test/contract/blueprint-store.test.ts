import { memoryBlueprintStore } from '../../src/store/memory/blueprint-store.ts'
import { databasesHere } from '../support/open-stores.ts'
import { blueprintStoreContract } from './blueprint-store.ts'

blueprintStoreContract('memory', false, () => {
  const store = memoryBlueprintStore()
  return Promise.resolve({ store, again: () => Promise.resolve(store), close: () => Promise.resolve() })
})

for (const [name, open] of databasesHere) {
  blueprintStoreContract(name, true, async () => {
    const { store, again, close } = await open()
    return { store: store.blueprints, again: async () => (await again()).blueprints, close }
  })
}
