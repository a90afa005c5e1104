import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { valueOf } from '../../src/base/result.ts'
import { memoryBench } from '../../src/store/memory/bench.ts'
import { openStore, type OpenStore } from '../../src/store/sqlite/open-store.ts'
import { logStoreContract } from './log-store.ts'

logStoreContract('memory', () => {
  const stores = memoryBench()
  return Promise.resolve({ stores, again: () => Promise.resolve(stores), close: () => Promise.resolve() })
})

logStoreContract('SQLite', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-logs-'))
  let current: OpenStore = valueOf(await openStore({ folder }))
  return {
    stores: current,
    again: async () => {
      await current.close()
      current = valueOf(await openStore({ folder }))
      return current
    },
    close: async () => {
      await current.close()
      await rm(folder, { recursive: true })
    },
  }
})
