import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { blueprints } from '../../src/blueprint/library.ts'
import { grades, improvementIds } from '../../src/facts/asking.ts'
import { askingView, daysOfMarket } from '../../src/machine/asking.ts'
import { improvementsFor } from '../../src/machine/asking-choices.ts'
import type { Job } from '../../src/machine/job.ts'
import { marketOf, type Comparable } from '../../src/machine/market.ts'

const upright = blueprints.find(({ id }) => id === 'bagged-upright-one-motor')!
const on = '2026-06-01'

const sale = (priceMinor: number, id: number): Comparable => ({
  id: `s${id}`,
  priceMinor,
  currency: 'GBP',
  soldOn: '2026-05-20',
  from: 'own',
  machineKind: upright.worth.priceKind ?? null,
  model: 'heath',
  conditionShare: 1,
  completenessShare: 1,
})
const marketWith = (comparables: readonly Comparable[]) =>
  marketOf({ blueprint: upright, model: 'heath', currency: 'GBP', on, comparables })

describe('what a machine fetches', () => {
  it("more of one's own sales at a price pull it there", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1500, max: 12_000 }), fc.integer({ min: 1, max: 4 }), (priceMinor, few) => {
        const at = (count: number): number =>
          Math.abs(
            Math.log(marketWith(Array.from({ length: count }, (_, i) => sale(priceMinor, i))).medianMinor / priceMinor),
          )
        const [before, after] = [at(few), at(few + 6)]
        // Points of the logarithm lie two per cent apart.
        expect(after).toBeLessThanOrEqual(before + 0.02)
        expect(at(40)).toBeLessThan(0.06)
      }),
      { numRuns: 8, seed: 41 },
    )
  }, 120_000)
})

const market = marketWith([sale(4800, 1), sale(5300, 2)])
const days = [7, 30, 90].map((horizonDays) => ({ horizonDays, days: daysOfMarket(market, [], horizonDays) }))

const given = fc.record({
  spares: fc.integer({ min: 0, max: 4000 }),
  missing: fc.subarray(['hose', 'bag', 'brush-roll', 'motor', 'plug', 'switch']),
  feeShare: fc.constantFrom(0, 0.1, 0.15),
  dayMinor: fc.integer({ min: 0, max: 300 }),
  term: fc.constantFrom(...days),
  done: fc.subarray([...improvementIds]),
  hourMinor: fc.integer({ min: 0, max: 3000 }),
})
type Given = typeof given extends fc.Arbitrary<infer G> ? G : never

const viewOf = ({ spares, missing, dayMinor, term, done, hourMinor }: Given, grade: (typeof grades)[number]) => {
  const job: Job = {
    blueprint: upright,
    plate: upright.plate,
    complaints: [],
    missing: missing.filter((id) => upright.parts.some((part) => part.id === id)),
    events: [],
    off: [],
    hourMinor,
    prices: { working: null, spares: { minor: spares, at: '2026-01-01T00:00:00Z' }, parts: {} },
    putInMinor: 700,
  }
  const choices = { grade, done, found: [], dayMinor, horizonDays: term.horizonDays }
  return askingView({ job, market, days: term.days, listings: 0, choices })
}

describe('the price to ask', () => {
  it('never rises with a worse grade', () => {
    fc.assert(
      fc.property(given, (one) => {
        const asked = grades.map((grade) => viewOf(one, grade).askMinor)
        asked.slice(1).forEach((minor, i) => expect(minor).toBeLessThanOrEqual(asked[i]))
      }),
      { numRuns: 200, seed: 42 },
    )
  }, 60_000)

  it('no improvement adds more than the price itself, or takes anything off', () => {
    fc.assert(
      fc.property(given, fc.constantFrom(...grades), (one, grade) => {
        const view = viewOf(one, grade)
        const known = improvementsFor(upright)
        expect(view.improvements.filter(({ id }) => !id.startsWith('part:')).map(({ id }) => id)).toEqual(known)
        for (const { gainMinor } of view.improvements) {
          expect(gainMinor).toBeGreaterThanOrEqual(0)
          expect(gainMinor).toBeLessThanOrEqual(view.best.priceMinor)
        }
      }),
      { numRuns: 100, seed: 43 },
    )
  }, 60_000)

  it('is the one of the curve that brings most, and dearer always stands longer', () => {
    fc.assert(
      fc.property(given, fc.constantFrom(...grades), (one, grade) => {
        const { curve, best } = viewOf(one, grade)
        expect(best.expectedMinor).toBe(Math.max(...curve.map(({ expectedMinor }) => expectedMinor)))
        curve.slice(1).forEach((at, i) => {
          expect(at.priceMinor).toBeGreaterThan(curve[i].priceMinor)
          expect(at.medianDays).toBeGreaterThanOrEqual(curve[i].medianDays)
        })
      }),
      { numRuns: 40, seed: 44 },
    )
  }, 60_000)
})
