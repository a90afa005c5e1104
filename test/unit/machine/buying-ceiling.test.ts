import { describe, expect, it } from 'vitest'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { checkOverheadMin, exitCosts } from '../../../src/facts/trade.ts'
import { buyingView, quickCeiling, quickEffort } from '../../../src/machine/buying/index.ts'
import { defaultCosts, withCosts } from '../../../src/machine/costs.ts'
import { machineModel, machineView, suspectBelief } from '../../../src/machine/index.ts'
import type { Job } from '../../../src/machine/job.ts'
import { advertOf, termsOf } from '../../support/adverts.ts'
import { oneFault, oneFaultBlueprint } from '../../support/one-fault-blueprint.ts'

const stick = blueprintById('stick-upright')!
const upright = blueprintById('bagged-upright-two-motors')!
const costs = withCosts(defaultCosts('UK'), { perKmMinor: 25, minutesPerKm: 2, collectMin: 10 })

describe('the most to pay', () => {
  it('is what the machine’s own page says it is worth, less travel and the wanted profit', () => {
    const advert = advertOf(stick, { distanceKm: 6, wanted: { kind: 'profit', minor: 300 }, ageYears: 9, missing: [] })
    const job: Job = {
      blueprint: stick,
      plate: stick.plate,
      history: { ageYears: 9 },
      complaints: ['dead'],
      missing: [],
      events: [],
      off: [],
      hourMinor: 800,
      costs,
    }
    const { carryOnMinor, upperMinor } = machineView(job).worth
    // 12 km there and back: 12 × 25, and 12 × 2 + 10 minutes at 8.00 an hour.
    const travelMinor = 300 + (34 * 800) / 60
    const { ceiling, travel } = buyingView(advert, termsOf(stick, { costs }))
    expect(travel.minor).toBeCloseTo(travelMinor, 9)
    expect(ceiling.exactMinor).toBeCloseTo(carryOnMinor - travelMinor - 300, 6)
    expect(ceiling.knowingMinor).toBeCloseTo(upperMinor - travelMinor - 300, 6)
    expect(ceiling.minor).toBe(Math.max(0, Math.floor(ceiling.exactMinor)))
  })

  it('for a wanted rate is the price at which an hour of own time brings just that', () => {
    const terms = termsOf(upright, { costs, effort: quickEffort })
    const advert = advertOf(upright, { wanted: { kind: 'an-hour', minor: 500 } })
    const { ceiling } = buyingView(advert, terms)
    const { atAsking } = buyingView({ ...advert, askingMinor: ceiling.minor }, terms)
    expect(ceiling.minor).toBeGreaterThan(0)
    // The price is cut down to a whole penny, spread over some two hours.
    expect(atAsking.anHourMinor).toBeGreaterThanOrEqual(500)
    expect(atAsking.anHourMinor).toBeLessThan(501)
  })

  it('is nothing, and says so, where even a gift would lose money', () => {
    const { ceiling } = buyingView(advertOf(stick, { distanceKm: 200 }), termsOf(stick))
    expect(ceiling).toMatchObject({ minor: 0, notEvenForNothing: true })
    expect(ceiling.exactMinor).toBeLessThan(0)
  })

  it('is lowered by caution until one machine in five loses money', () => {
    const cautious = termsOf(upright, { attitude: 'cautious', effort: quickEffort })
    const { ceiling } = buyingView(advertOf(upright), cautious)
    const at = buyingView(advertOf(upright, { askingMinor: ceiling.minor }), cautious).atAsking
    expect(ceiling.minor).toBeGreaterThan(0)
    expect(ceiling.loweredByCaution).toBe(true)
    expect(ceiling.exactMinor).toBeLessThan(ceiling.onAverageMinor)
    expect(at.lossChance).toBeLessThanOrEqual(0.2 + 1e-3)
  })

  it('stands lower for a worn machine and one without its parts', () => {
    const of = (own: Parameters<typeof advertOf>[1]): number =>
      buyingView(advertOf(stick, own), termsOf(stick)).ceiling.exactMinor
    const part = stick.parts.find(({ spareMinor }) => spareMinor !== undefined)!
    expect(of({ condition: 'poor' })).toBeLessThan(of({ condition: 'fair' }))
    expect(of({ condition: 'fair' })).toBeLessThan(of({}))
    expect(of({ missing: [part.id] })).toBeLessThan(of({}))
  })

  it('goes by the market where one is given', () => {
    const market = { lowMinor: 6000, medianMinor: 8000, highMinor: 10_500 }
    const { price, ceiling } = buyingView(advertOf(stick), termsOf(stick, { market }))
    expect(price).toMatchObject({ from: 'market' })
    expect(price.medianMinor).toBeCloseTo(8000, -1)
    // Mean of a log-normal: median × exp(s²/2), s = ln(high/low) / 3.29 (a standard result).
    expect(price.meanMinor).toBeCloseTo(8000 * Math.exp((Math.log(10_500 / 6000) / 3.28971) ** 2 / 2), -1)
    expect(ceiling.exactMinor).toBeGreaterThan(buyingView(advertOf(stick), termsOf(stick)).ceiling.exactMinor)
  })
})

describe('the quick formula and the plan', () => {
  const own = withCosts(costs, { comebackMin: 0, saleFeeShare: 0.05 })
  const terms = termsOf(oneFaultBlueprint, { costs: own })
  const view = buyingView(advertOf(oneFaultBlueprint), terms)
  const { cleanMin, photographMin, listMin, handOverMin } = exitCosts.sellWorking
  const model = machineModel(oneFaultBlueprint, oneFaultBlueprint.plate)
  const job: Job = { blueprint: oneFaultBlueprint, plate: oneFaultBlueprint.plate, complaints: ['dead'], missing: [], events: [], off: [], hourMinor: 800, costs: own } // prettier-ignore
  const [sound, faulty] = suspectBelief(model, job).probability
  const runMin = oneFault.runMin + checkOverheadMin.value
  const mendedMin = runMin + oneFault.repairMin + runMin
  const sellingMin = cleanMin + photographMin + listMin + handOverMin
  const openMin = oneFaultBlueprint.covers.reduce((sum, cover) => sum + cover.openMin, 0)
  const [soldSound, soldMended] = [sound, faulty * oneFault.success]
  const repairable = soldSound + soldMended

  it('say the same to a penny where one fault, one repair and one run are all there is', () => {
    // Followed by hand: run; where it does not run repair and run again; sold where it runs, else opened and nothing in it sells.
    const ceilingMinor = quickCeiling({
      repairable,
      saleMinor: oneFault.saleMinor,
      feeShare: 0.05,
      partsMinor: (soldMended * oneFault.partsMinor) / repairable,
      consumablesMinor: own.materialsMinor,
      comebackShare: own.comebackShare,
      hours: ((soldSound * runMin + soldMended * mendedMin) / repairable + sellingMin) / 60,
      hourMinor: 800,
      sparesMinor: -oneFault.partsMinor,
      breakHours: (mendedMin + openMin) / 60,
      travelMinor: view.travel.minor,
    })
    expect(Math.abs(view.ceiling.exactMinor - ceilingMinor)).toBeLessThan(1)
  })

  it('are set side by side with the figures of the plan’s own policy', () => {
    expect(quickCeiling(view.quick.planned)).toBeCloseTo(view.ceiling.exactMinor, 6)
    expect(view.quick.planned.repairable).toBeCloseTo(repairable, 9)
  })

  it('differ for a reason that is named', () => {
    expect(view.quick.agrees).toBe(Math.abs(view.quick.ceilingMinor - view.ceiling.exactMinor) <= 0.05 * 8000)
    const [largest] = view.quick.differences
    expect(view.quick.text).toContain(view.quick.agrees ? 'the same within' : largest.name)
    expect(Math.abs(largest.movesMinor)).toBeGreaterThan(0)
  })
})
