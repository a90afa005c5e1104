import { describe, expect, it } from 'vitest'
import { priceOf, salesAt } from '../../support/money-cases.ts'

const sold = (pricesMinor: readonly number[], about: object) =>
  salesAt(pricesMinor).map((one) => ({ ...one, ...about, id: `${JSON.stringify(about)} ${one.id}` }))

describe('a price', () => {
  it('is the prior alone without comparables, and at least as wide', () => {
    const { sale, restsOn } = priceOf([])
    expect(sale.medianMinor).toBe(6000)
    expect(sale.ninety[0]).toBeLessThan(4000)
    expect(sale.ninety[1]).toBeGreaterThan(9000)
    expect(restsOn).toContain('No sales to compare with: this is the prior alone')
  })

  it('gets narrower with one comparable, and with two', () => {
    const [none, one, two] = [[], [7000], [7000, 7200]].map((list) => priceOf(salesAt(list)).bandFactor)
    expect(one).toBeLessThan(none)
    expect(two).toBeLessThan(one)
    expect(two).toBeGreaterThan(1.2)
  })

  it('goes by the model before its kind, and by its kind before the class', () => {
    const at = (about: object): number => priceOf(sold([8500, 8500, 8500], about)).sale.medianMinor
    const [model, kind, other] = [at({}), at({ model: 'invented 4' }), at({ machineKind: 'stiff neck' })]
    expect(model).toBeGreaterThan(kind)
    expect(kind).toBeGreaterThan(other)
    expect(other).toBeGreaterThan(6000)
  })

  it('takes names that differ only in capitals and spaces as one, and an unknown model as one of its own', () => {
    const levels = priceOf([
      ...sold([7000], { model: ' Invented  3' }),
      ...sold([7000], { model: null }),
      ...sold([7000], { machineKind: null, model: 'invented 3' }),
    ]).comparables.map(({ level }) => level)
    expect(levels).toEqual(['model', 'kind', 'class'])
  })

  it('believes an old sale and an entered price less', () => {
    const weightOf = (about: object): number => priceOf(sold([6000], about)).comparables[0].timeShare
    expect(weightOf({ soldOn: '2025-06-01' })).toBeCloseTo(0.5, 6)
    expect(weightOf({ soldOn: '2026-06-01' })).toBe(1)
    expect(weightOf({ soldOn: '2026-06-01', from: 'entered' })).toBeCloseTo(0.7, 6)
  })

  it('goes up and down with condition and completeness', () => {
    const usual = priceOf(salesAt([6000])).sale.medianMinor
    const worn = priceOf(salesAt([6000]), { conditionShare: 0.8, completenessShare: 0.5 })
    expect(worn.sale.medianMinor / usual).toBeCloseTo(0.4, 3)
    expect(worn.comparables[0].likeMinor).toBe(2400)
    const asWorn = sold([2400], { conditionShare: 0.8, completenessShare: 0.5 })
    expect(priceOf(asWorn).sale.medianMinor).toBe(usual)
  })

  it('names a silly price and says what it still counts', () => {
    const { comparables, restsOn } = priceOf(salesAt([7000, 7500, 7200, 70_000]))
    expect(comparables.map(({ isOdd }) => isOdd)).toEqual([false, false, false, true])
    expect(restsOn.filter((one) => one.includes('far from the rest'))).toHaveLength(1)
  })

  it('has a density that sums to one over its points', () => {
    const { density, sale } = priceOf(salesAt([7000, 7500]))
    const area = density.slice(1).reduce((sum, { minor, perMinor }, i) => {
      const before = density[i]
      return sum + ((minor - before.minor) * (perMinor + before.perMinor)) / 2
    }, 0)
    expect(area).toBeCloseTo(1, 2)
    expect(density[0].minor).toBeLessThan(sale.ninety[0])
  })
})
