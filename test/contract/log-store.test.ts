import { memoryBench } from '../../src/store/memory/bench.ts'
import { databasesHere } from '../support/open-stores.ts'
import { logStoreContract } from './log-store.ts'

logStoreContract('memory', () => {
  const stores = memoryBench()
  return Promise.resolve({ stores, again: () => Promise.resolve(stores), close: () => Promise.resolve() })
})

for (const [name, open] of databasesHere) {
  logStoreContract(name, async () => {
    const { store, again, close } = await open()
    return { stores: store, again, close }
  })
}
