import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../../src/base/result.ts'
import { foldNotes } from '../../../../src/bench/fold.ts'
import { jobOf } from '../../../../src/bench/job.ts'
import type { NoteContentInput } from '../../../../src/bench/note.ts'
import { comparableOf, ownListings, ownSale } from '../../../../src/bench/prices/comparables.ts'
import { priceContentSchema, type PriceContentInput } from '../../../../src/bench/prices/price-note.ts'
import { makeReckoner } from '../../../../src/bench/prices/reckoner.ts'
import { seenPrices } from '../../../../src/bench/prices/seen-prices.ts'
import { marketPriceOf, whatToAsk } from '../../../../src/bench/prices/what-to-ask.ts'
import { blueprints } from '../../../../src/blueprint/library.ts'
import { gradeFacts } from '../../../../src/facts/asking.ts'
import { priceClassIds } from '../../../../src/facts/sale-prices.ts'
import { marketWords, type MarketPrice } from '../../../../src/machine/market.ts'
import { workingPriceOf } from '../../../../src/machine/prices.ts'
import { memorySettingsStore } from '../../../../src/store/memory/settings-store.ts'
import { added, log } from '../../../support/notes.ts'
import { storesOf } from '../../../support/stores.ts'

const upright = blueprints.find(({ id }) => id === 'bagged-upright-one-motor')!
const dearer = blueprints.find(({ id }) => id === 'bagged-upright-two-motors')!
const now = '2026-06-01T10:00:00.000Z'

const come = (over: Parameters<typeof added>[0] = {}): NoteContentInput =>
  added({ blueprint: upright.id, plate: upright.plate, ...over })
const sold = (receivedMinor: number): NoteContentInput => ({
  kind: 'left',
  exit: 'sell-working',
  receivedMinor,
  safety: 'tested',
})

describe('a machine that is offered', () => {
  it('stands at each price until the next one, and the last until it leaves', () => {
    const notes = log([
      come(),
      { kind: 'listed', priceMinor: 5500, where: 'shed door', grade: 'A' },
      { kind: 'listed', priceMinor: 4800 },
      sold(4500),
    ])
    const [, first, second, left] = notes.map(({ at }) => at)
    expect(foldNotes(notes).listed).toEqual([
      { note: 'n2', priceMinor: 5500, where: 'shed door', grade: 'A', from: first, to: second, sold: false },
      { note: 'n3', priceMinor: 4800, where: '', grade: 'B', from: second, to: left, sold: true },
    ])
    expect(foldNotes(notes.slice(0, 2)).listed).toMatchObject([{ to: null, sold: false }])
    const scrapped: NoteContentInput = { kind: 'left', exit: 'scrap', receivedMinor: 0 }
    expect(foldNotes(log([come(), { kind: 'listed', priceMinor: 900 }, scrapped])).listed).toMatchObject([
      { sold: false },
    ])
  })

  it('counts in days, unsold while it stands', () => {
    const notes = log([come(), { kind: 'listed', priceMinor: 5500 }])
    const later = new Date(Date.parse(notes[1].at) + 12 * 24 * 3600 * 1000).toISOString()
    expect(ownListings(foldNotes(notes), upright, later)).toMatchObject([
      { days: 12, ended: 'unsold', priceMinor: 5500 },
    ])
  })

  it('a listing that was struck out never was', () => {
    const notes = log([come(), { kind: 'listed', priceMinor: 5500 }, { kind: 'struck', note: 'n2' }])
    expect(foldNotes(notes).listed).toEqual([])
  })
})

describe('a sale as a comparable', () => {
  it('carries its money, day, grade and what was missing', () => {
    const hose = upright.parts.find(({ id }) => id === 'hose')!
    const state = foldNotes(
      log([
        come({ missing: ['hose'], model: ' Heath  900' }),
        { kind: 'listed', priceMinor: 5000, grade: 'C' },
        sold(3900),
      ]),
    )
    const row = ownSale(state, upright)!
    const { low, high } = hose.spareMinor!
    const { workingMinor } = upright.worth
    expect(comparableOf(row)).toMatchObject({
      priceMinor: 3900,
      soldOn: '2026-03-14',
      from: 'own',
      machineKind: 'bagged-upright-one-motor',
      model: 'heath 900',
      conditionShare: gradeFacts.C.share,
    })
    // What is missing takes off what it fetches as a spare.
    expect(row.completenessShare).toBeCloseTo(1 - (low + high) / (workingMinor.low + workingMinor.high), 10)
  })

  it('is none for a machine in hand, scrapped, sold for spares, or virtual', () => {
    const left = (exit: 'scrap' | 'sell-for-spares'): NoteContentInput => ({ kind: 'left', exit, receivedMinor: 700 })
    for (const notes of [
      [come()],
      [come(), left('scrap')],
      [come(), left('sell-for-spares')],
      [come({ practiceSeed: 3 }), sold(4000)],
    ])
      expect(ownSale(foldNotes(log(notes)), upright)).toBeNull()
  })

  it('every blueprint of the library belongs to a class of prices, variants with the one they vary', () => {
    for (const { worth } of blueprints) expect(priceClassIds).toContain(worth.priceClass)
    expect(new Set(blueprints.map(({ worth }) => worth.priceKind)).size).toBe(10)
  })
})

const market: MarketPrice = { currency: 'GBP', lowMinor: 5500, medianMinor: 7300, highMinor: 9800, own: 3, seen: 2 }

describe('what the plan reckons with', () => {
  const job = jobOf(foldNotes(log([come()])), log([come()]), upright)

  it("is the note's price, else the market's mean, else the blueprint's", () => {
    const middle = (upright.worth.workingMinor.low + upright.worth.workingMinor.high) / 2
    expect(workingPriceOf(job)).toEqual({ minor: middle, setAt: null })
    // Mean of a log-normal is its median times exp(sd²/2); nine in ten lie within 1.6449 sd (standard normal tables).
    const sd = Math.log(9800 / 5500) / (2 * 1.6449)
    const reckoned = workingPriceOf({ ...job, market })
    expect(reckoned.minor).toBeCloseTo(7300 * Math.exp((sd * sd) / 2), -1)
    expect(reckoned).toMatchObject({ setAt: null, market })
    const set = { working: { minor: 6000, at: now }, spares: null, parts: {} }
    expect(workingPriceOf({ ...job, market, prices: set })).toEqual({ minor: 6000, setAt: now })
  })

  it('says what it rests on', () => {
    expect(marketWords(market)).toBe('From 3 of your sales and 2 prices you entered, £55.00 to £98.00 for nine in ten')
    expect(marketWords({ ...market, own: 1, seen: 0 })).toMatch(/^From 1 of your sales, /)
    expect(marketWords({ ...market, own: 0, seen: 1 })).toMatch(/^From 1 price you entered, /)
  })
})

const benchOf = () => {
  let ids = 0
  const deps = {
    ...storesOf(),
    bench: 'own' as const,
    settings: memorySettingsStore(),
    blueprintById: (id: string) => blueprints.find((one) => one.id === id),
    blueprintIds: () => blueprints.map(({ id }) => id),
    now: () => now,
    newId: () => `id-${++ids}`,
    reckoner: makeReckoner(),
  }
  const sell = async (priceMinor: number, blueprint = upright, model = ''): Promise<void> => {
    const id = deps.newId()
    const notes = log([come({ blueprint: blueprint.id, plate: blueprint.plate, model }), sold(priceMinor)], id)
    await deps.store.add('own', id, notes)
  }
  const see = (over: Partial<Extract<PriceContentInput, { kind: 'seen' }>>) =>
    seenPrices.begin(
      deps,
      priceContentSchema.parse({
        kind: 'seen',
        blueprint: upright.id,
        priceMinor: 4500,
        currency: 'GBP',
        day: '2026-05-20',
        ...over,
      }),
    )
  const kind = { blueprint: upright, model: '', currency: 'GBP' as const }
  const ask = async (over: Parameters<typeof whatToAsk>[3] = {}, missing: string[] = []) => {
    const notes = log([come({ missing })])
    const state = foldNotes(notes)
    return valueOf(await whatToAsk(deps, jobOf(state, notes, upright), state, over))
  }
  return { deps, sell, see, kind, ask }
}

describe('what to ask', () => {
  it('no sale at all: no market, and a price from the blueprint with a wide band', async () => {
    const { deps, kind, ask } = benchOf()
    expect(await marketPriceOf(deps, kind)).toBeNull()
    const { asking, prices } = await ask()
    const { low, high } = upright.worth.workingMinor
    expect(prices).toEqual([])
    expect(asking.sale.lowMinor).toBeLessThan(low)
    expect(asking.sale.highMinor).toBeGreaterThan(high)
    expect(asking.restsOn.join()).toContain('No sales to compare with')
  })

  it('works with two comparables and says how wide the band is', async () => {
    const { deps, sell, see, kind, ask } = benchOf()
    await sell(5200)
    await see({ priceMinor: 5600 })
    const found = (await marketPriceOf(deps, kind))!
    expect(found).toMatchObject({ own: 1, seen: 1, currency: 'GBP' })
    expect(found.lowMinor).toBeLessThan(found.medianMinor)
    const { asking, prices } = await ask()
    expect(asking).toMatchObject({ own: 1, seen: 1 })
    expect(asking.restsOn.at(-1)).toMatch(/^Nine sales in ten would bring between £[\d.]+ and £[\d.]+, a factor of/)
    expect(prices.map(({ say }) => say?.level)).toEqual(['kind', 'kind'])
  })

  it('leaves out other classes, other money and what did not sell; unsold ones count for the days', async () => {
    const { deps, sell, see, kind, ask } = benchOf()
    await sell(12_000, dearer)
    await see({ priceMinor: 9900, currency: 'EUR' })
    await see({ priceMinor: 9900, sold: false, days: 40 })
    expect(await marketPriceOf(deps, kind)).toBeNull()
    const { asking, prices, listings } = await ask()
    expect(asking).toMatchObject({ own: 0, seen: 0, listings: 1 })
    expect(prices.map(({ say }) => say)).toEqual([null])
    expect(listings).toMatchObject([{ ended: 'unsold', days: 40 }])
  })

  it('names an odd price', async () => {
    const { see, ask } = benchOf()
    for (const priceMinor of [4400, 4500, 4600, 4700, 4500, 30_000]) await see({ priceMinor, model: 'heath' })
    const { prices } = await ask()
    expect(prices.filter(({ say }) => say?.isOdd).map(({ priceMinor }) => priceMinor)).toEqual([30_000])
  })

  it('a worse grade and a missing hose take off their share; refuses a part that is not missing', async () => {
    const { deps, see, ask } = benchOf()
    await see({})
    const [b, d] = [(await ask({ grade: 'B' })).asking, (await ask({ grade: 'D' })).asking]
    // The trade's ladder: D fetches 0.6 of B.
    expect(d.sale.medianMinor / b.sale.medianMinor).toBeCloseTo(0.6, 2)
    const bare = (await ask({}, ['hose'])).asking
    expect(bare.sale.medianMinor / b.sale.medianMinor).toBeCloseTo(bare.completenessShare, 2)
    expect(bare.reckonMinor).toBe(b.reckonMinor)
    const found = (await ask({ found: ['hose'] }, ['hose'])).asking
    expect(found.askMinor).toBe(b.askMinor)
    const notes = log([come()])
    const state = foldNotes(notes)
    expect(await whatToAsk(deps, jobOf(state, notes, upright), state, { found: ['hose'] })).toMatchObject({
      kind: 'refused',
      problems: [{ where: 'found' }],
    })
  })

  it('a dearer day and a nearer end never make the price higher', async () => {
    const { see, ask } = benchOf()
    await see({})
    const at = async (over: Parameters<typeof ask>[0]) => (await ask(over)).asking.askMinor
    expect(await at({ dayMinor: 100 })).toBeLessThanOrEqual(await at({}))
    expect(await at({ horizonDays: 7 })).toBeLessThanOrEqual(await at({ horizonDays: 60 }))
  })

  it('the floor is what was put in and what is still to be done', async () => {
    const { ask } = benchOf()
    const { floor } = (await ask()).asking
    expect(floor.parts.reduce((sum, { minor }) => sum + minor, 0)).toBe(floor.minor)
    expect(floor.parts[0]).toEqual({ name: 'Paid and spent so far, less what was taken out of it', minor: 500 })
  })
})
