import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { SettingsStore } from '../../src/bench/ports.ts'
import type { KeptChange, SettingsChange } from '../../src/bench/settings-change.ts'

/** A store under test. `again` gives the store as another start of the program would find it. */
export type SettingsStoreUnderTest = {
  readonly store: SettingsStore
  readonly again: () => Promise<SettingsStore>
  readonly close: () => Promise<void>
}

const changed = (change: SettingsChange, minute = 0): KeptChange => ({
  at: new Date(Date.UTC(2026, 2, 14, 12, minute)).toISOString(),
  change,
})

/** What every store of settings must do. `outlives`: whether it keeps them beyond one start of the program. */
export const settingsStoreContract = (
  name: string,
  outlives: boolean,
  make: () => Promise<SettingsStoreUnderTest>,
): void => {
  describe(`store of settings: ${name}`, () => {
    let under: SettingsStoreUnderTest
    let store: SettingsStore
    beforeEach(async () => {
      under = await make()
      store = under.store
    })
    afterEach(() => under.close())

    it('has no change at first', async () => expect(await store.changes()).toEqual([]))

    it('gives back every change, word for word, in the order they were made', async () => {
      // The same moment twice, then an earlier one: the order of making counts, not the clock.
      const made = [
        changed({ hourMinor: 950, currency: 'EUR', attitude: 'cautious' }, 5),
        changed({ attitude: 'average' }, 5),
        changed({ hourMinor: 0 }),
      ]
      for (const one of made) expect(await store.add(one)).toEqual({ kind: 'kept' })
      expect(await store.changes()).toEqual(made)
    })

    it('loses none of many that are made at once', async () => {
      const hands = Array.from({ length: 6 }, (_, hand) => changed({ hourMinor: hand }))
      await Promise.all(hands.map((one) => store.add(one)))
      const kept = (await store.changes()).map(({ change }) => change.hourMinor ?? -1)
      expect(kept.toSorted((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5])
    })

    if (!outlives) return
    it('gives the same to the next start of the program', async () => {
      await store.add(changed({ hourMinor: 1200 }))
      expect(await (await under.again()).changes()).toEqual([changed({ hourMinor: 1200 })])
    })
  })
}
