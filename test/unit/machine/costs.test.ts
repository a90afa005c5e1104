import { describe, expect, it } from 'vitest'
import { foldNotes } from '../../../src/bench/fold.ts'
import { jobOf } from '../../../src/bench/job.ts'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { costFieldText, costFromText, costText } from '../../../src/facts/cost-words.ts'
import { regions } from '../../../src/facts/regions.ts'
import { costLimits, costNames, kmPerMile } from '../../../src/facts/trade-costs.ts'
import { defaultCosts, withCosts, type CostsSet } from '../../../src/machine/costs.ts'
import { chancesOfSet } from '../../../src/machine/exit-chances.ts'
import { exitLines } from '../../../src/machine/exit-lines.ts'
import { moneySum } from '../../../src/machine/money-lines.ts'
import { partNet } from '../../../src/machine/parts-for-sale.ts'
import type { ExitId } from '../../../src/machine/view.ts'
import { added, log } from '../../support/notes.ts'

const upright = blueprintById('bagged-upright-one-motor')!
const uk = defaultCosts('UK')
const sumOf = (exit: ExitId, set: CostsSet | null) => {
  const notes = log([added({ blueprint: upright.id, plate: upright.plate })])
  const costs = set === null ? undefined : withCosts(uk, set)
  const job = jobOf(foldNotes(notes), notes, upright, 'average', costs)
  return moneySum('', exitLines(job, exit, chancesOfSet(upright, (costs ?? uk).comebackShare, [])))
}
const minorOf = (exit: ExitId, set: CostsSet | null, name: string) =>
  sumOf(exit, set).lines.find((line) => line.name === name)?.minor

describe('what things cost', () => {
  it('in the United Kingdom as the trade figures have it', () => {
    // Trade figures (judgement) and the tax office's 45p a mile: 8.00 of materials, a tenth for the fee, 6 % back, 60 minutes.
    expect(uk).toMatchObject({ materialsMinor: 800, partFeeShare: 0.1, comebackShare: 0.06, comebackMin: 60 })
    expect(uk).toMatchObject({ saleFeeShare: 0, postageMinor: 0 })
    expect(uk.perKmMinor * kmPerMile).toBeCloseTo(45, 9)
    // A round trip of ten miles: £4.50 and 25 minutes.
    expect(uk.minutesPerKm * 10 * kmPerMile).toBeCloseTo(25, 9)
  })

  it.each(regions)('is known in %s, within what may be set, with a source each', (region) => {
    const costs = defaultCosts(region)
    for (const name of costNames) {
      expect(costs[name]).toBeGreaterThanOrEqual(0)
      expect(costs[name]).toBeLessThanOrEqual(costLimits[name].most)
      if (costLimits[name].whole) expect(Number.isInteger(costs[name])).toBe(true)
      expect(costs.from[name]).not.toBe('set')
    }
  })

  it('in a region with another money: its amounts are those of the money, its minutes and shares its own', () => {
    expect(defaultCosts('EU', 'GBP').materialsMinor).toBe(uk.materialsMinor)
    expect(defaultCosts('EU', 'GBP').perKmMinor).toBe(uk.perKmMinor)
    expect(defaultCosts('EU').perKmMinor).not.toBe(uk.perKmMinor)
  })
})

describe('the exits go by it', () => {
  it.each(['sell-working', 'sell-for-spares', 'break-for-parts', 'scrap'] as const)(
    '%s: left out, as in the United Kingdom',
    (exit) => {
      expect(sumOf(exit, null)).toEqual(sumOf(exit, {}))
    },
  )

  it('sold working: materials, fee, returns', () => {
    expect(minorOf('sell-working', { materialsMinor: 250 }, 'Bag, filters, cleaning')).toBe(-250)
    const price = minorOf('sell-working', null, 'Sold working')!
    expect(minorOf('sell-working', { saleFeeShare: 0.12 }, 'Fee of selling it')).toBeCloseTo(-0.12 * price, 9)
    expect(minorOf('sell-working', null, 'Fee of selling it')).toBeUndefined()
    expect(minorOf('sell-working', { comebackShare: 0.2 }, 'Money given back')).toBeCloseTo(-0.2 * price, 9)
    // 30 minutes at 8.00 an hour for one in five.
    expect(minorOf('sell-working', { comebackShare: 0.2, comebackMin: 30 }, 'Minutes of a return')).toBeCloseTo(-80, 9)
  })

  it('sold for spares: the fee', () => {
    const price = minorOf('sell-for-spares', null, 'Sold for spares or repair')!
    expect(minorOf('sell-for-spares', { saleFeeShare: 0.1 }, 'Fee of selling it')).toBeCloseTo(-0.1 * price, 9)
  })

  it('in parts: fee and postage', () => {
    const [fee, dearer] = [0.1, 0.15].map((partFeeShare) =>
      minorOf('break-for-parts', { partFeeShare }, 'Fees of selling by post'),
    )
    expect(dearer! / fee!).toBeCloseTo(1.5, 9)
    expect(minorOf('break-for-parts', null, 'Postage of what sells, on average')).toBeUndefined()
    expect(minorOf('break-for-parts', { postageMinor: 100 }, 'Postage of what sells, on average')).toBeLessThan(0)
    // 20.00 less a tenth, less 3.00 of postage, of those that sell; own time free.
    const whole = partNet(2000, 0, { partFeeShare: 0, postageMinor: 0 })
    expect(partNet(2000, 0, { partFeeShare: 0.1, postageMinor: 300 })).toBeCloseTo((whole * (1800 - 300)) / 2000, 9)
  })

  it('lines say that a cost was set, or where it comes from', () => {
    const grounds = (set: CostsSet) => {
      const { lines, sources } = sumOf('sell-working', set)
      return lines.find(({ name }) => name === 'Bag, filters, cleaning')!.sources.map((at) => sources[at])
    }
    expect(grounds({ materialsMinor: 250 })).toEqual(['Cost set by you'])
    expect(grounds({ collectMin: 5 })).toEqual([expect.stringMatching(/filters and bag \(judgement\)$/)])
  })
})

describe('a cost in words', () => {
  it.each([
    ['perKmMinor', '0.45', 45, '£0.45 (£0.72 a mile)'],
    ['materialsMinor', '£8', 800, '£8.00'],
    ['partFeeShare', '12,5 %', 0.125, '12.5 %'],
    ['minutesPerKm', '1.5', 1.5, '1.5 min'],
  ] as const)('%s: “%s”', (name, text, value, words) => {
    expect(costFromText(name, text)).toBeCloseTo(value, 12)
    expect(costText(name, value, 'GBP')).toBe(words)
    expect(costFromText(name, costFieldText(name, value))).toBeCloseTo(value, 12)
  })
  it.each(['', 'dear', '-1', '1.234', '1e3'])('“%s” is none', (text) => {
    expect(costNames.map((name) => costFromText(name, text))).toEqual(costNames.map(() => null))
  })
})
