import { describe, expect, it } from 'vitest'
import {
  meterUncertaintyOhm,
  ohmBandProbability,
  ohmDensity,
  ohmSlipDensity,
  openProbability,
  sampleOhmReading,
  type MeterSpec,
} from '../../../src/engines/belief/index.ts'
import { normalAbove, normalBetween, normalDensity } from '../../../src/engines/belief/normal.ts'
import { meterSpec, meters } from '../../../src/facts/meters.ts'
import { seededRandom } from '../../../src/base/random.ts'

const budget = meterSpec('budget-multimeter')
const bare = (percent: number, digits: number, resolutionOhm: number, leadSpreadOhm: number): MeterSpec => ({
  ...budget,
  percent,
  digits,
  ranges: [{ maximumOhm: 400, resolutionOhm }],
  leadOhm: 0,
  leadSpreadOhm,
})

describe('normal distribution', () => {
  // Abramowitz & Stegun, Handbook of Mathematical Functions, table 26.1 (from memory); further digits from Python's math.erfc.
  it.each([
    [0, 0.5],
    [1, 0.15865525393145707],
    [1.96, 0.02499789514822043],
    [3, 0.001349898031630095],
    [5, 2.866515718791939e-7],
    [8, 6.220960574271786e-16],
    [10, 7.6198530241605e-24],
  ])('above %d', (z, p) => {
    expect(Math.abs(normalAbove(z) - p)).toBeLessThan(1e-15)
    expect(Math.abs(normalAbove(z) / p - 1)).toBeLessThan(1e-7)
    expect(normalAbove(-z)).toBeCloseTo(1 - p, 14)
  })

  it('between two points is the area under its own density', () => {
    for (const [from, to] of [
      [-2, 1.5],
      [7, 7.5],
      [-9, -8],
    ] as const) {
      const steps = 2000
      const width = (to - from) / steps
      let area = 0
      for (let i = 0; i < steps; i++) area += normalDensity(from + (i + 0.5) * width) * width
      expect(normalBetween(from, to) / area).toBeCloseTo(1, 5)
    }
  })
})

describe('uncertainty of a shown resistance', () => {
  it('divides a limit by √3, as in the published example 1.5 / √3 = 0.87', () => {
    // A limit of 1.5 Ω: 15 digits of 0.1 Ω. Analytical-uncertainty guide, worked value; GUM (JCGM 100:2008) 4.3.7.
    expect(meterUncertaintyOhm(bare(0, 15, 0.1, 0), 50)).toBeCloseTo(0.87, 2)
  })

  // U = 2 u, worked by hand from GUM 4.3.7: earth-bond reading with a four-digit and with a cheap meter, lead null as half-width.
  it.each([
    { percent: 0.2, digits: 2, resolutionOhm: 0.01, nullOhm: 0.02, readOhm: 0.25, expandedOhm: 0.0331, places: 4 },
    { percent: 0.8, digits: 3, resolutionOhm: 0.1, nullOhm: 0.1, readOhm: 0.25, expandedOhm: 0.367, places: 3 },
    { percent: 0.8, digits: 3, resolutionOhm: 0.1, nullOhm: 0.1, readOhm: 0.5, expandedOhm: 0.37, places: 3 },
  ])('U is $expandedOhm at $readOhm Ω, ±($percent % + $digits d)', (row) => {
    const spec = bare(row.percent, row.digits, row.resolutionOhm, row.nullOhm)
    expect(2 * meterUncertaintyOhm(spec, row.readOhm)).toBeCloseTo(row.expandedOhm, row.places)
  })

  it('counts digits of the range that the reading falls in', () => {
    expect(meterUncertaintyOhm(budget, 401) / meterUncertaintyOhm(budget, 399)).toBeGreaterThan(1.9)
  })
})

describe('model of a reading', () => {
  const cases = [
    { resistanceOhm: 0, sdOhm: 0 },
    { resistanceOhm: 0.2, sdOhm: 0.02 },
    { resistanceOhm: 5, sdOhm: 2 },
    { resistanceOhm: 390, sdOhm: 30 },
    { resistanceOhm: 10_000, sdOhm: 100 },
    { resistanceOhm: 3.9e7, sdOhm: 4e6 },
    { resistanceOhm: 1e9, sdOhm: 1e8 },
  ]
  const grid = [0, 0.15, 0.35, 0.75, 2, 5, 10, 50, 385, 1000, 9900, 1e5, 1e6, 3.7e7, Infinity]
  const bandsOf = (spec: MeterSpec, predicted: (typeof cases)[number]): number[] =>
    grid.slice(1).map((high, i) => ohmBandProbability(spec, predicted, grid[i], high))

  describe.each(meters)('$id', (spec) => {
    it.each(cases)('bands and open make 1 at $resistanceOhm Ω', (predicted) => {
      const sum = bandsOf(spec, predicted).reduce((a, b) => a + b) + openProbability(spec, predicted)
      expect(sum).toBeCloseTo(1, 12)
    })

    it.each(cases)('density integrates to what is not open at $resistanceOhm Ω', (predicted) => {
      const width = 1 / ohmSlipDensity(spec)
      const largest = spec.ranges.at(-1)!.maximumOhm
      // y = ln(r + floor) runs from ln(floor) over `width`, so floor = largest / (e^width − 1).
      const floor = largest / Math.expm1(width)
      const steps = 200_000
      let area = 0
      for (let i = 0; i < steps; i++) {
        const y = Math.log(floor) + ((i + 0.5) * width) / steps
        area += (ohmDensity(spec, predicted, Math.exp(y) - floor) * width) / steps
      }
      expect(area).toBeCloseTo(1 - openProbability(spec, predicted), 4)
    })
  })

  it('an open circuit shows open and never a number', () => {
    const open = { resistanceOhm: Infinity, sdOhm: 0 }
    expect(openProbability(budget, open)).toBe(1)
    expect(ohmBandProbability(budget, open, 0, Infinity)).toBe(0)
    expect(ohmDensity(budget, open, 1e6)).toBe(0)
    expect(sampleOhmReading(budget, open, seededRandom(1))).toEqual({ kind: 'open' })
    expect(openProbability(budget, { resistanceOhm: 1e9, sdOhm: 0 })).toBeGreaterThan(0.999999)
  })

  it('shows the leads along with the machine', () => {
    const around = (ohm: number) => ohmDensity(budget, { resistanceOhm: 5, sdOhm: 0 }, ohm)
    expect(around(5 + budget.leadOhm)).toBeGreaterThan(around(5))
  })

  it.each([cases[0], cases[1], cases[2], cases[3], cases[4], cases[5]])(
    'a virtual meter shows what the bands foretell at $resistanceOhm Ω',
    (predicted) => {
      const random = seededRandom(20_251_016)
      const draws = 40_000
      const counts = new Array<number>(grid.length).fill(0)
      for (let i = 0; i < draws; i++) {
        const reading = sampleOhmReading(budget, predicted, random)
        const band =
          reading.kind === 'open' ? grid.length - 1 : grid.findLastIndex((low) => low <= reading.resistanceOhm)
        counts[band] += 1
      }
      const expected = [...bandsOf(budget, predicted), openProbability(budget, predicted)]
      // Five standard errors, and half a step of the display that may carry a reading over a band's edge.
      expected.forEach((p, band) => {
        const tolerance = 5 * Math.sqrt((p * (1 - p)) / draws) + 0.002
        expect(Math.abs(counts[band] / draws - p), `band ${band}`).toBeLessThan(tolerance)
      })
    },
  )

  it('a virtual meter shows whole steps of the range it is on', () => {
    const random = seededRandom(7)
    const readings = Array.from({ length: 200 }, () =>
      sampleOhmReading(budget, { resistanceOhm: 0.3, sdOhm: 0.1 }, random),
    )
    for (const reading of readings) {
      if (reading.kind === 'ohms') expect(String(reading.resistanceOhm)).toMatch(/^\d+(\.\d)?$/)
    }
    const kilo = sampleOhmReading(budget, { resistanceOhm: 12_345, sdOhm: 0 }, random)
    expect(kilo.kind === 'ohms' && kilo.resistanceOhm % 10).toBe(0)
  })
})

describe('meter table', () => {
  it('has ranges in order, last digits that count and a source', () => {
    for (const { ranges, digits, source, leadSource } of meters) {
      ranges.slice(1).forEach((range, i) => expect(range.maximumOhm).toBeGreaterThan(ranges[i].maximumOhm))
      ranges.forEach((range) => expect(range.maximumOhm / range.resolutionOhm).toBeGreaterThan(1000))
      expect(digits).toBeGreaterThan(0)
      expect(source.title.length * leadSource.title.length).toBeGreaterThan(0)
    }
  })

  it('takes a meter that is not known for the coarsest', () => {
    expect(meterSpec('one of my own')).toBe(meters[0])
  })
})
