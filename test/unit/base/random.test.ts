import { describe, expect, it } from 'vitest'
import { seededRandom } from '../../../src/base/random.ts'

describe('seeded random numbers', () => {
  it('are the same for the same seed and others for another', () => {
    const three = (seed: number) =>
      Array.from(
        { length: 3 },
        (
          (random) => () =>
            random.uniform()
        )(seededRandom(seed)),
      )
    expect(three(7)).toEqual(three(7))
    expect(three(7)).not.toEqual(three(8))
  })

  it('have the mean and variance of a standard normal within four standard errors', () => {
    const random = seededRandom(1)
    const draws = Array.from({ length: 40_000 }, random.normal)
    const mean = draws.reduce((sum, x) => sum + x, 0) / draws.length
    const variance = draws.reduce((sum, x) => sum + (x - mean) ** 2, 0) / draws.length
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(draws.length))
    expect(Math.abs(variance - 1)).toBeLessThan(4 * Math.sqrt(2 / draws.length))
  })

  it('of neighbouring seeds are unrelated: first numbers of 4,000 seeds have the correlation of chance, and fill ten bins evenly', () => {
    const first = Array.from({ length: 4001 }, (_, seed) => seededRandom(seed).uniform())
    const pairs = first.slice(1).map((x, i) => (x - 0.5) * (first[i] - 0.5) * 12)
    const correlation = pairs.reduce((sum, x) => sum + x, 0) / pairs.length
    expect(Math.abs(correlation)).toBeLessThan(4 / Math.sqrt(pairs.length))
    const bins = new Array<number>(10).fill(0)
    for (const x of first) bins[Math.floor(x * 10)]++
    for (const count of bins) expect(Math.abs(count - 400)).toBeLessThan(4 * Math.sqrt(360))
  })

  it('draw an index as often as its weight says, and never one of weight zero', () => {
    const random = seededRandom(3)
    const counts = [0, 0, 0]
    for (let i = 0; i < 30_000; i++) counts[random.index([1, 0, 3])]++
    expect(counts[1]).toBe(0)
    expect(counts[0] / 30_000).toBeCloseTo(0.25, 1)
  })
})
