import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { OwnBlueprint } from '../../src/bench/own-blueprint.ts'
import type { BlueprintStore } from '../../src/bench/ports.ts'
import { tinyBlueprint } from '../support/tiny-blueprint.ts'

/** A store under test. `again` gives the store as another start of the program would find it. */
export type BlueprintStoreUnderTest = {
  readonly store: BlueprintStore
  readonly again: () => Promise<BlueprintStore>
  readonly close: () => Promise<void>
}

const own = (id: string, over: Partial<OwnBlueprint> = {}): OwnBlueprint => ({
  id,
  name: 'Tiny “naïve” Ω upright 🧹',
  base: 'tiny',
  edits: [{ kind: 'part-absent', part: 'switch' }],
  blueprint: { ...tinyBlueprint, id },
  savedAt: '2026-03-14T12:00:00.000Z',
  ...over,
})

/** What every store of one's own blueprints must do. `outlives`: whether it keeps them beyond one start of the program. */
export const blueprintStoreContract = (
  name: string,
  outlives: boolean,
  make: () => Promise<BlueprintStoreUnderTest>,
): void => {
  describe(`store of own blueprints: ${name}`, () => {
    let under: BlueprintStoreUnderTest
    let store: BlueprintStore
    beforeEach(async () => {
      under = await make()
      store = under.store
    })
    afterEach(() => under.close())

    it('gives back what was put, word for word, in the order it came', async () => {
      const [z, a] = [own('own-z-1'), own('own-a-1', { base: null, edits: [] })]
      expect(await store.put(z)).toEqual({ kind: 'kept' })
      expect(await store.put(a)).toEqual({ kind: 'kept' })
      expect(await store.get('own-z-1')).toEqual(z)
      expect(await store.list()).toEqual([z, a])
    })

    it('has nothing of what is not there', async () => {
      expect(await store.get('own-z-1')).toBeNull()
      expect(await store.list()).toEqual([])
    })

    it('never overwrites; the same sent again does no harm', async () => {
      await store.put(own('own-z-1'))
      expect(await store.put(own('own-z-1'))).toEqual({ kind: 'kept' })
      expect(await store.put(own('own-z-1', { name: 'Other' }))).toEqual({ kind: 'taken' })
      expect(await store.list()).toEqual([own('own-z-1')])
    })

    it('lets exactly one of many that put under the same id win', async () => {
      const hands = Array.from({ length: 6 }, (_, hand) => own('own-z-1', { name: `Hand ${hand}` }))
      const outcomes = await Promise.all(hands.map((one) => store.put(one)))
      expect(outcomes.filter(({ kind }) => kind === 'kept')).toHaveLength(1)
      expect(outcomes.filter(({ kind }) => kind === 'taken')).toHaveLength(5)
      expect(await store.list()).toEqual(hands.filter((_, hand) => outcomes[hand]?.kind === 'kept'))
    })

    if (!outlives) return
    it('gives the same to the next start of the program', async () => {
      await store.put(own('own-z-1'))
      const next = await under.again()
      expect(await next.list()).toEqual([own('own-z-1')])
    })
  })
}
