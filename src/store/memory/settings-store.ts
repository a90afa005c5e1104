import type { SettingsStore } from '../../bench/ports.ts'
import type { KeptChange } from '../../bench/settings-change.ts'

/** The port of settings in memory: forgotten when the program ends. For the demonstration and for tests. */
export const memorySettingsStore = (): SettingsStore => {
  const changes: KeptChange[] = []
  return {
    changes: () => Promise.resolve([...changes]),
    add: (change) => {
      changes.push(change)
      return Promise.resolve({ kind: 'kept' })
    },
  }
}
