import { describe, expect, it } from 'vitest'
import { advertHistory } from '../../../../src/bench/adverts/advert-history.ts'
import { adverts } from '../../../../src/bench/adverts/adverts.ts'
import type { AdvertContent } from '../../../../src/bench/adverts/advert-note.ts'
import { partHistory } from '../../../../src/bench/shelf/part-history.ts'
import type { PartContent } from '../../../../src/bench/shelf/part-note.ts'
import { foldPart } from '../../../../src/bench/shelf/part-state.ts'
import { shelf } from '../../../../src/bench/shelf/shelf-commands.ts'
import { signedStores } from '../../../../src/bench/people/signed-stores.ts'
import { blueprintById } from '../../../../src/blueprint/library.ts'
import { memoryBench } from '../../../../src/store/memory/bench.ts'
import { advertOf } from '../../../support/adverts.ts'

/** A bench at which somebody else may write each entry. */
const bench = () => {
  let [ids, writer] = [0, null as string | null]
  const { logs } = signedStores(memoryBench(), () => writer)
  const deps = { logs, bench: 'own' as const, now: () => '2026-03-14T10:00:00.000Z', newId: () => `e${++ids}` }
  return { deps, writes: (by: string | null) => void (writer = by) }
}

describe('the history of a part', () => {
  const put: PartContent = { kind: 'put', name: 'Motor', partKind: 'motor', spec: {}, condition: 'tested', origin: { kind: 'bought', where: 'a lot' }, currency: 'GBP', costMinor: 900, count: 3, place: '' } // prettier-ignore

  it('says what was done, by whom, and what of it was struck out', async () => {
    const { deps, writes } = bench()
    await shelf.begin(deps, put, 'p1')
    writes('ada')
    await shelf.add(deps, 'p1', 1, { kind: 'counted', count: 2, reason: 'one was behind the bench' }, 'count')
    writes('ben')
    await shelf.add(deps, 'p1', 2, { kind: 'struck', note: 'count', reason: '' })
    await shelf.add(deps, 'p1', 3, { kind: 'reserved', machine: 'm1' })
    const lines = partHistory((await shelf.document(deps, 'p1'))!)
    expect(lines.map(({ text, machine, by, isStruck, canStrike }) => [text, machine, by, isStruck, canStrike])).toEqual(
      [
        ['put on the shelf, 3 at £9.00', null, undefined, false, true],
        ['counted: 2: one was behind the bench', null, 'ada', true, false],
        ['an entry was struck out', null, 'ben', false, false],
        ['kept for', 'm1', 'ben', false, true],
      ],
    )
  })

  it('leaves what came off a machine or went into one to be struck out there', () => {
    const origin = { kind: 'machine', machine: 'm1', part: 'motor' } as const
    const contents: readonly PartContent[] = [
      { ...put, origin },
      { kind: 'used', machine: 'm2', costMinor: 300 },
      { kind: 'sold', count: 1, receivedMinor: 500, feeMinor: 0, postageMinor: 0, minutes: 0 },
    ]
    const at = '2026-03-14T10:00:00.000Z'
    const entries = contents.map((content, i) => ({ id: `e${i}`, log: 'p1', seq: i + 1, at, content }))
    const lines = partHistory({ state: foldPart(entries), entries })
    expect(lines.map(({ text, machine, canStrike }) => [text, machine, canStrike])).toEqual([
      ['put on the shelf, 3 at £9.00', null, false],
      ['one at £3.00 went into', 'm2', false],
      ['1 sold for £5.00', null, true],
    ])
  })
})

describe('the history of an advert', () => {
  it('says who weighed it and who passed it by, and that can be struck out', async () => {
    const { deps, writes } = bench()
    const guess = { ceilingMinor: 1200, expectedMinor: 0, spreadMinor: 0, expectedMin: 60, lossChance: 0.5, likely: [] }
    const advert = advertOf(blueprintById('bagged-upright-two-motors')!)
    const weighed: AdvertContent = { kind: 'weighed', name: 'Grey one', advert, guess }
    writes('ben')
    await adverts.begin(deps, weighed, 'a1')
    writes('ada')
    await adverts.add(deps, 'a1', 1, { kind: 'passed', reason: 'too far' }, 'pass')
    const passed = advertHistory((await adverts.document(deps, 'a1'))!)
    expect(passed.map(({ text, by, canStrike }) => [text, by, canStrike])).toEqual([
      ['weighed: asks £15.00, at most £12.00', 'ben', false],
      ['passed by: too far', 'ada', true],
    ])
    await adverts.add(deps, 'a1', 2, { kind: 'struck', note: 'pass', reason: '' })
    const document = (await adverts.document(deps, 'a1'))!
    expect(document.state.decided).toBeNull()
    expect(advertHistory(document).map(({ isStruck, canStrike }) => [isStruck, canStrike])).toEqual([
      [false, false],
      [true, false],
      [false, false],
    ])
  })
})
