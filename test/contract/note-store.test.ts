import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { valueOf } from '../../src/base/result.ts'
import { memoryNoteStore } from '../../src/store/memory/note-store.ts'
import { openStore, type OpenStore } from '../../src/store/sqlite/open-store.ts'
import { noteStoreContract } from './note-store.ts'

noteStoreContract('memory', false, () => {
  const store = memoryNoteStore()
  return Promise.resolve({ store, again: () => Promise.resolve(store), close: () => Promise.resolve() })
})

noteStoreContract('SQLite', true, async () => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-store-'))
  let current: OpenStore = valueOf(await openStore({ folder }))
  return {
    store: current.notes,
    again: async () => {
      await current.close()
      current = valueOf(await openStore({ folder }))
      return current.notes
    },
    close: async () => {
      await current.close()
      await rm(folder, { recursive: true })
    },
  }
})
