import { memoryNoteStore } from '../../src/store/memory/note-store.ts'
import { databasesHere } from '../support/open-stores.ts'
import { noteStoreContract } from './note-store.ts'

noteStoreContract('memory', false, () => {
  const store = memoryNoteStore()
  return Promise.resolve({ store, again: () => Promise.resolve(store), close: () => Promise.resolve() })
})

for (const [name, open] of databasesHere) {
  noteStoreContract(name, true, async () => {
    const { store, again, close } = await open()
    return { store: store.notes, again: async () => (await again()).notes, close }
  })
}
