import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { betweenVariance, shrunkRatios, type Estimate } from '../../src/engines/belief/index.ts'
import { ageBandOf, ageBands, ageShifts, labelsOfFaultTypes } from '../../src/facts/age-and-wear.ts'
import { readCsv } from '../support/csv.ts'

/**
 * Thirteen trials of the BCG vaccine, cases and non-cases with and without it: Colditz et al., JAMA 271 (1994) 698, a
 * standard example of normal-normal shrinkage. Maximum-likelihood figures of the log odds ratios: mean −0.742, variance 0.302
 * (van Houwelingen, Arends, Stijnen, Statistics in Medicine 21 (2002) 589); of the log risk ratios: variance 0.280. From memory.
 */
const trials: readonly (readonly [number, number, number, number])[] = [
  [4, 119, 11, 128],
  [6, 300, 29, 274],
  [3, 228, 11, 209],
  [62, 13536, 248, 12619],
  [33, 5036, 47, 5761],
  [180, 1361, 372, 1079],
  [8, 2537, 10, 619],
  [505, 87886, 499, 87892],
  [29, 7470, 45, 7232],
  [17, 1699, 65, 1600],
  [186, 50448, 141, 27197],
  [5, 2493, 3, 2338],
  [27, 16886, 29, 17825],
]

describe('variance between true values', () => {
  it('is the published one of the vaccine trials, as odds and as risks', () => {
    const odds = trials.map(([a, b, c, d]): Estimate => ({
      value: Math.log((a * d) / (b * c)),
      variance: 1 / a + 1 / b + 1 / c + 1 / d,
    }))
    const risks = trials.map(([a, b, c, d]): Estimate => ({
      value: Math.log(a / (a + b) / (c / (c + d))),
      variance: 1 / a - 1 / (a + b) + 1 / c - 1 / (c + d),
    }))
    expect(betweenVariance(odds, null)).toBeCloseTo(0.302, 3)
    expect(betweenVariance(risks, null)).toBeCloseTo(0.28, 3)
  })

  it('is nothing where the estimates lie closer than their own errors', () => {
    const close = [-0.1, 0, 0.1, 0.05].map((value): Estimate => ({ value, variance: 1 }))
    expect(betweenVariance(close)).toBe(0)
  })
})

describe('shrunk ratios', () => {
  it('stay at 1 where all groups have the same mix, and follow the counts where there are many', () => {
    for (const { ratio } of shrunkRatios([
      [30, 60],
      [10, 20],
    ]).flat())
      expect(ratio).toBeCloseTo(1, 6)
    const far = shrunkRatios([
      [9000, 1000],
      [1000, 9000],
    ])
    expect(far[0][0].ratio).toBeCloseTo(1.8, 1)
    expect(far[0][1].ratio).toBeCloseTo(0.2, 1)
  })
})

// Open Repair Alliance, vacuum-cleaner records, snapshot of 2025-10-16, CC BY-SA 4.0, lying beside the repository.
const file = new URL('../../../shared/data/vacuum-repairs-open.csv', import.meta.url)
const isThere = existsSync(file)
if (!isThere) console.log('No open repair records beside the repository: the age table is not fitted anew.')

describe.runIf(isThere)('the age table against the records', () => {
  const types = Object.entries(labelsOfFaultTypes)
  const counts = types.map(() => ageBands.map(() => 0))
  for (const row of isThere ? readCsv(readFileSync(file, 'utf8'), ['corded', 'fault_type', 'age']) : []) {
    const type = types.findIndex(([, label]) => label === row.fault_type)
    if (row.corded !== 'true' || row.age === '' || type < 0) continue
    const band = counts[type]
    const at = ageBandOf(Number(row.age))
    band[at] = (band[at] ?? 0) + 1
  }

  it('counts are those of the records', () => {
    expect(ageShifts.map(({ faultType, records }) => [faultType, records])).toEqual(
      types.map(([id], i) => [id, counts[i]]),
    )
  })

  it('ratios and intervals are those of a fresh fit', () => {
    const fresh = shrunkRatios(counts)
    ageShifts.forEach((row, i) =>
      ageBands.forEach((_, band) => {
        const cell = fresh[i][band]
        expect(row.ratio[band], row.faultType).toBeCloseTo(cell.ratio, 2)
        expect(row.low[band], row.faultType).toBeCloseTo(cell.low, 2)
        expect(row.high[band], row.faultType).toBeCloseTo(cell.high, 2)
      }),
    )
  })

  it('cords fail more on old machines and blockages on young ones, as the raw shares say', () => {
    const share = (type: string, band: number): number => {
      const row = types.findIndex(([id]) => id === type)
      return counts[row][band] / counts.reduce((sum, each) => sum + each[band], 0)
    }
    expect(share('cord', 3)).toBeGreaterThan(share('cord', 0))
    expect(share('blockage', 0)).toBeGreaterThan(share('blockage', 3))
    const ratioOf = (type: string) => ageShifts.find(({ faultType }) => faultType === type)!.ratio
    expect(ratioOf('cord')[3]).toBeGreaterThan(ratioOf('cord')[0])
    expect(ratioOf('blockage')[0]).toBeGreaterThan(ratioOf('blockage')[3])
  })
})
