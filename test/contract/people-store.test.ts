import { memoryPeopleStore } from '../../src/store/memory/people-store.ts'
import { databasesHere } from '../support/open-stores.ts'
import { peopleStoreContract } from './people-store.ts'

peopleStoreContract('memory', false, () => {
  const store = memoryPeopleStore()
  return Promise.resolve({ store, again: () => Promise.resolve(store), close: () => Promise.resolve() })
})

for (const [name, open] of databasesHere) {
  peopleStoreContract(name, true, async () => {
    const { store, again, close } = await open()
    return { store: store.people, again: async () => (await again()).people, close }
  })
}
