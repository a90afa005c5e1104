import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { blueprintById } from '../../src/blueprint/library.ts'
import { plan } from '../../src/engines/plan/index.ts'
import { exitCosts } from '../../src/facts/trade.ts'
import { buyingView, quickEffort, type AdvertInput, type BuyingView } from '../../src/machine/buying/index.ts'
import { weigh } from '../../src/machine/buying/wagers.ts'
import { defaultCosts } from '../../src/machine/costs.ts'
import { chancesOfSet } from '../../src/machine/exit-chances.ts'
import { machineModel, planProblem, suspectBelief } from '../../src/machine/index.ts'
import type { Job } from '../../src/machine/job.ts'
import { advertOf, termsOf } from '../support/adverts.ts'
import { simulatedEndings } from '../support/simulate-policy.ts'
import { seededRandom } from '../../src/base/random.ts'
import { tinyBlueprint } from '../support/tiny-blueprint.ts'
import { times } from '../support/depth.ts'

const tiny = { ...tinyBlueprint, worth: { ...tinyBlueprint.worth, workingMinor: { low: 5000, high: 9000 } } }
const viewOf = (own: Partial<AdvertInput>, hourMinor = 800): BuyingView =>
  buyingView(advertOf(tiny, own), termsOf(tiny, { hourMinor }))

const km = fc.integer({ min: 0, max: 60 })
const minor = fc.integer({ min: 0, max: 6000 })
const hour = fc.integer({ min: 0, max: 3000 })
/** Money in pence that differs by rounding alone. */
const rounding = 1e-6
const runs = { numRuns: times(6), seed: 1871 }

describe('the most to pay', () => {
  it('falls as the way gets longer', () => {
    fc.assert(
      fc.property(km, km, (a, b) => {
        const [near, far] = [Math.min(a, b), Math.max(a, b)]
        expect(viewOf({ distanceKm: far }).ceiling.exactMinor).toBeLessThanOrEqual(
          viewOf({ distanceKm: near }).ceiling.exactMinor + rounding,
        )
      }),
      runs,
    )
  })

  it('falls by just what more is wanted', () => {
    fc.assert(
      fc.property(minor, (wanted) => {
        const { exactMinor } = viewOf({ wanted: { kind: 'profit', minor: wanted } }).ceiling
        expect(exactMinor).toBeCloseTo(viewOf({}).ceiling.exactMinor - wanted, 6)
      }),
      runs,
    )
  })

  it('falls as the hour is to bring more', () => {
    fc.assert(
      fc.property(hour, hour, (a, b) => {
        const at = (rate: number): number => viewOf({ wanted: { kind: 'an-hour', minor: rate } }).ceiling.exactMinor
        expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)) + rounding)
      }),
      runs,
    )
  })

  it('is never above what one who knew the fault could pay, and never below nothing', () => {
    fc.assert(
      fc.property(km, minor, hour, (distanceKm, askingMinor, hourMinor) => {
        const { ceiling } = viewOf({ distanceKm, askingMinor }, hourMinor)
        expect(ceiling.exactMinor).toBeLessThanOrEqual(ceiling.knowingMinor + rounding)
        expect(ceiling.minor).toBeGreaterThanOrEqual(0)
        expect(ceiling.minor).toBeLessThanOrEqual(Math.max(0, ceiling.exactMinor))
      }),
      runs,
    )
  })

  it('does not go by what is asked, so that ceiling and price part company in step', () => {
    fc.assert(
      fc.property(minor, minor, (a, b) => {
        const [one, other] = [viewOf({ askingMinor: a }), viewOf({ askingMinor: b })]
        expect(one.ceiling).toEqual(other.ceiling)
        expect(one.atAsking.profitMinor - other.atAsking.profitMinor).toBeCloseTo(b - a, 6)
      }),
      runs,
    )
  })

  it('is never raised by caution', () => {
    fc.assert(
      fc.property(km, (distanceKm) => {
        const advert = advertOf(tiny, { distanceKm })
        const { ceiling } = buyingView(advert, termsOf(tiny, { attitude: 'cautious' }))
        expect(ceiling.exactMinor).toBeLessThanOrEqual(ceiling.onAverageMinor + rounding)
      }),
      runs,
    )
  })
})

describe('what is asked and looked at', () => {
  it('never has negative value, whatever is asked for the machine', () => {
    fc.assert(
      fc.property(minor, km, (askingMinor, distanceKm) => {
        const { questions, spotChecks } = viewOf({ askingMinor, distanceKm })
        for (const { valueMinor } of [...questions, ...spotChecks]) expect(valueMinor).toBeGreaterThanOrEqual(0)
      }),
      runs,
    )
  })

  it('is worth no more than knowing the suspect', () => {
    const money = fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 3, maxLength: 3 })
    const chance = fc.double({ min: 0.01, max: 1, noNaN: true })
    fc.assert(
      fc.property(
        fc.array(money, { minLength: 1, maxLength: 4 }),
        fc.tuple(chance, chance, chance),
        minor,
        (ways, told, asked) => {
          // prettier-ignore
          const deal = { belief: Float64Array.of(0.5, 0.3, 0.2), ways: ways.map((way) => Float64Array.from(way)), firstMinor: 0, askingMinor: asked } // prettier-ignore
          const some = [
            { id: 'yes', chance: Float64Array.from(told) },
            { id: 'no', chance: Float64Array.from(told, (p) => 1 - p) },
          ]
          const all = [0, 1, 2].map((s) => ({ id: `${s}`, chance: Float64Array.from([0, 1, 2], (one) => Number(one === s)) })) // prettier-ignore
          expect(weigh(deal, some).valueMinor).toBeGreaterThanOrEqual(0)
          expect(weigh(deal, some).valueMinor).toBeLessThanOrEqual(weigh(deal, all).valueMinor + 0.1)
        },
      ),
      { ...runs, numRuns: times(200) },
    )
  })
})

describe('the chance of losing money', () => {
  it('rises with the price and the way, and lies between nothing and one', () => {
    fc.assert(
      fc.property(minor, minor, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)]
        const [cheap, dear] = [low, high].map((askingMinor) => viewOf({ askingMinor }).atAsking.lossChance)
        expect(dear).toBeGreaterThanOrEqual(cheap - 1e-9)
        expect(dear).toBeLessThanOrEqual(1)
        expect(cheap).toBeGreaterThanOrEqual(0)
      }),
      runs,
    )
  })

  it('is drawn: the columns add up to one', () => {
    fc.assert(
      fc.property(minor, (askingMinor) => {
        const { density } = viewOf({ askingMinor }).atAsking
        expect(density.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 6)
        for (const { share } of density) expect(share).toBeGreaterThanOrEqual(-1e-9)
      }),
      runs,
    )
  })
})

const machines = 10_000

describe('on virtual machines of a library blueprint', () => {
  it.each([
    ['commercial-upright', 'dead', 1500],
    ['tub-by-pass', 'weak-suction', 1200],
    ['bagged-upright-one-motor', 'dead', 900],
  ] as const)('what is promised of %s, %s, comes in, to three standard errors', (id, complaint, askingMinor) => {
    const blueprint = blueprintById(id)!
    const costs = defaultCosts('UK')
    const advert = advertOf(blueprint, { complaints: [complaint], askingMinor })
    const { atAsking, travel, price } = buyingView(advert, termsOf(blueprint, { effort: quickEffort }))
    const job: Job = { blueprint, plate: blueprint.plate, complaints: [complaint], missing: [], events: [], off: [], hourMinor: 800, costs } // prettier-ignore
    const model = machineModel(blueprint, blueprint.plate)
    const { problem, kept } = planProblem(model, job, suspectBelief(model, job).probability)
    const { policy } = plan(problem, { effort: quickEffort })
    const random = seededRandom(1901)
    const sdLog = Math.log(price.ninety[1] / price.ninety[0]) / (2 * 1.6448536)
    // Written out again from the trade's figures, apart from the code that is tried.
    const { cleanMin, photographMin, listMin, handOverMin } = exitCosts.sellWorking
    const sellingMinor = costs.materialsMinor + ((cleanMin + photographMin + listMin + handOverMin) * 800) / 60
    const sparesMinor = (blueprint.worth.sparesMinor.low + blueprint.worth.sparesMinor.high) / 2
    const profits = simulatedEndings(problem, policy, machines, 2001).map(({ exit, suspect, spentMinor }) => {
      const paid = spentMinor + travel.minor + askingMinor
      if (exit !== 'sell-working') return problem.exits.find((one) => one.id === exit)!.payoffMinor[suspect] - paid
      const { comesBack } = chancesOfSet(blueprint, costs.comebackShare, model.sets[kept[suspect]])
      if (random.uniform() < comesBack) return sparesMinor - (costs.comebackMin * 800) / 60 - sellingMinor - paid
      return price.medianMinor * Math.exp(sdLog * random.normal()) - sellingMinor - paid
    })
    const mean = profits.reduce((sum, x) => sum + x, 0) / machines
    const spread = Math.sqrt(profits.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (machines - 1))
    const loss = profits.filter((x) => x < 0).length / machines
    expect(Math.abs(mean - atAsking.profitMinor)).toBeLessThan((3 * spread) / Math.sqrt(machines))
    expect(Math.abs(loss - atAsking.lossChance)).toBeLessThan(3 * Math.sqrt((loss * (1 - loss)) / machines))
    expect(Math.abs(spread - atAsking.spreadMinor)).toBeLessThan(0.05 * spread)
    const inside = profits.filter((x) => x >= atAsking.ninety[0] && x <= atAsking.ninety[1]).length / machines
    expect(Math.abs(inside - 0.9)).toBeLessThan(0.02)
  })
})
