import type { BenchStores } from '../../bench/ports.ts'
import { memoryBookStore } from './book-store.ts'
import { memoryLogStore } from './log-store.ts'
import { memoryLogs } from './logs.ts'
import { memoryNoteStore } from './note-store.ts'

/** Everything that is kept of a bench, in memory: forgotten when the program ends. */
export const memoryBench = (): BenchStores => {
  const logs = memoryLogs()
  return { notes: memoryNoteStore(logs), logs: memoryLogStore(logs), books: memoryBookStore(logs) }
}
