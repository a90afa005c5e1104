import { describe, expect, it } from 'vitest'
import { independentPrior, removedIndex, suspectSets } from '../../../src/engines/belief/index.ts'

const faults = [
  { id: 'open', excludes: ['short'] },
  { id: 'short', excludes: [] },
  { id: 'belt', excludes: [] },
]

describe('suspectSets', () => {
  it('puts nothing first, then singles, then pairs that can be there together', () => {
    expect(suspectSets(faults, 2)).toEqual([[], [0], [1], [2], [0, 2], [1, 2]])
  })

  it.each([
    [0, 1],
    [1, 4],
  ] as const)('holds sets of at most %i faults', (most, count) => {
    expect(suspectSets(faults, most)).toHaveLength(count)
  })
})

describe('independentPrior', () => {
  it('is the product of rates and their complements over the sets there are', () => {
    const sets = suspectSets(faults, 2)
    const rate = [0.1, 0.02, 0.3]
    const weight = sets.map((set) => rate.reduce((p, r, i) => p * (set.includes(i) ? r : 1 - r), 1))
    const total = weight.reduce((a, b) => a + b)
    independentPrior(sets, Float64Array.from(rate)).forEach((p, s) => expect(p).toBeCloseTo(weight[s] / total, 14))
  })

  it('gives back the rates as marginals when every set is there', () => {
    const sets = [[], [0], [1], [0, 1]]
    const prior = independentPrior(sets, Float64Array.of(0.25, 0.1))
    expect(prior[1] + prior[3]).toBeCloseTo(0.25, 14)
    expect(prior[2] + prior[3]).toBeCloseTo(0.1, 14)
  })

  it('keeps a certain fault in and an impossible one out', () => {
    const prior = independentPrior(suspectSets(faults, 2), Float64Array.of(1, 0, 0.3))
    expect([...prior]).toEqual([0, expect.closeTo(0.7, 14), 0, 0, expect.closeTo(0.3, 14), 0])
  })

  it('throws on rates that are none, or that no set can meet', () => {
    expect(() => independentPrior([[]], Float64Array.of(1.5))).toThrow(/between 0 and 1/)
    expect(() => independentPrior([[], [0], [1]], Float64Array.of(1, 1))).toThrow(/certain/)
    expect(() => independentPrior([[], [3]], Float64Array.of(0.1))).toThrow(/fault 3 has no rate/)
  })
})

describe('removedIndex', () => {
  const sets = suspectSets(faults, 2)

  it('points at what is left of each set', () => {
    const becomes = removedIndex(sets, new Set([0, 2]))
    expect(becomes.map((to) => sets[to])).toEqual([[], [], [1], [], [], [1]])
  })

  it('throws when the sets are not closed under removal', () => {
    expect(() => removedIndex([[0, 1]], new Set([0]))).toThrow(/not \{1\}/)
  })
})
