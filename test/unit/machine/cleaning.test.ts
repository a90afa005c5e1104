import { describe, expect, it } from 'vitest'
import { blueprints } from '../../../src/blueprint/library.ts'
import type { Grade } from '../../../src/facts/asking.ts'
import { askingView, daysOfMarket, priceAt } from '../../../src/machine/asking.ts'
import type { AskingChoices } from '../../../src/machine/asking-choices.ts'
import { cleaningPlan, type CleaningDone } from '../../../src/machine/cleaning/cleaning-plan.ts'
import type { Job } from '../../../src/machine/job.ts'
import { marketOf } from '../../../src/machine/market.ts'

const blueprintOf = (id: string) => blueprints.find((one) => one.id === id)!
const jobOf = (blueprint: string, over: Partial<Job> = {}): Job => {
  const own = blueprintOf(blueprint)
  return {
    blueprint: own,
    plate: own.plate,
    complaints: [],
    missing: [],
    events: [],
    off: [],
    hourMinor: 1200,
    ...over,
  }
}

const choices: AskingChoices = { grade: 'C', done: ['cleaned', 'new-filters'], found: [], dayMinor: 0, horizonDays: 30 }

/** What to ask, worked out anew for each choice: the model itself, from the market up. */
const askerOf = (job: Job) => {
  const market = marketOf({
    blueprint: job.blueprint,
    model: '',
    currency: 'GBP',
    on: '2026-06-01',
    comparables: [],
  })
  const days = daysOfMarket(market, [], 30)
  return (over: Partial<AskingChoices> = {}) =>
    askingView({ job, market, days, listings: 0, choices: { ...choices, ...over } })
}

const upright = jobOf('bagged-upright-one-motor')
const ask = askerOf(upright)
const asking = ask()
const planOf = (over: { grade?: Grade; done?: readonly CleaningDone[]; job?: Job } = {}) =>
  cleaningPlan({ job: over.job ?? upright, asking, grade: over.grade ?? 'C', done: over.done ?? [] })

const all = (plan: ReturnType<typeof planOf>) => [...plan.first, ...plan.ranked, ...plan.ifFound]
const byId = (plan: ReturnType<typeof planOf>, id: string) => all(plan).find((one) => one.id === id)!
/** A price is whole minor units, so a difference of two is good to two. */
const near = 2

describe('what cleaning brings', () => {
  it('is what the price to ask gains: bag and filters together as much as the asking price says of them', () => {
    const gain = ask().best.priceMinor - ask({ done: ['cleaned'] }).best.priceMinor
    const plan = planOf()
    const tasks = ['new-bag', 'new-motor-filter', 'new-exhaust-filter'].map((id) => byId(plan, id).gainMinor)
    expect(gain).toBeGreaterThan(100)
    expect(Math.abs(tasks.reduce((a, b) => a + b) - gain)).toBeLessThanOrEqual(near + 1)
    // By hand: new filters add a tenth to the price without them; two, two and one of five shares.
    const tenth = asking.best.priceMinor - asking.best.priceMinor / 1.1
    expect(tasks[0]).toBeCloseTo((tenth * 2) / 5, -1)
    expect(tasks[2]).toBeCloseTo(tenth / 5, -1)
  })

  it('shares out among the washing tasks what a clean machine gains, no more and no less', () => {
    const gain = ask().best.priceMinor - ask({ done: ['new-filters'] }).best.priceMinor
    const washing = all(planOf()).filter(({ adds }) => adds.includes('Stripped and cleaned'))
    expect(washing.length).toBeGreaterThan(8)
    expect(Math.abs(washing.reduce((sum, { gainMinor }) => sum + gainMinor, 0) - gain)).toBeLessThan(washing.length)
    // By hand: cleaned adds 0.35; the casing weighs 30 of the 96 that belong to this upright.
    const cleaned = asking.best.priceMinor - asking.best.priceMinor / 1.35
    expect(byId(planOf(), 'wash-casing').gainMinor).toBeCloseTo((cleaned * 30) / 96, -1)
  })

  it('counts a better grade with what the grade fetches: C 0.85, B 1.0, A 1.1', () => {
    const lift = (from: Grade, task: string) => byId(planOf({ grade: from }), task).gainMinor
    const price = (grade: Grade) => ask({ grade }).best.priceMinor
    expect(Math.abs(lift('C', 'scuffs') - (price('B') - price('C')))).toBeLessThanOrEqual(near)
    expect(Math.abs(lift('B', 'scratches') - (price('A') - price('B')))).toBeLessThanOrEqual(near)
    expect(lift('C', 'scuffs') / price('C')).toBeCloseTo(1 / 0.85 - 1, 2)
    for (const grade of ['A', 'B', 'D'] as const)
      expect(all(planOf({ grade })).map(({ id }) => id)).not.toContain('scuffs')
  })

  it('takes off materials and is told for each minute, against the worth of an hour', () => {
    for (const one of all(planOf())) {
      expect(one.perMinuteMinor).toBeCloseTo((one.gainMinor - one.costMinor) / one.minutes, 9)
      // As it is shown, to the penny: £12 an hour is £0.20 a minute.
      expect(one.isWorthIt).toBe(Math.round(one.perMinuteMinor) >= 20)
    }
    const dear = planOf({ job: { ...upright, hourMinor: 100_000 } })
    expect(all(dear).some(({ isWorthIt }) => isWorthIt)).toBe(false)
  })

  it('puts the price at other choices where the model itself puts it', () => {
    for (const grade of ['A', 'B', 'C', 'D'] as const) expect(planOf({ grade }).askMinor).toBe(ask({ grade }).askMinor)
    for (const over of [
      {},
      { grade: 'A' as const },
      { done: [] },
      { done: ['new-belt' as const], grade: 'D' as const },
    ]) {
      const there = ask(over).best.priceMinor
      expect(Math.abs(priceAt(upright, asking, { ...choices, ...over }) - there)).toBeLessThanOrEqual(1)
    }
  })
})

describe('the order of cleaning', () => {
  it('is by money for each minute, with what must be done first, as such', () => {
    for (const { id } of blueprints) {
      const job = jobOf(id)
      const plan = planOf({ job })
      const rates = plan.ranked.map(({ perMinuteMinor }) => perMinuteMinor)
      expect(rates).toEqual(rates.toSorted((a, b) => b - a))
      expect(plan.first.every(({ must }) => must !== null)).toBe(true)
      expect(plan.ranked.every(({ must }) => must === null)).toBe(true)
      expect(plan.first[0]?.id).toBe('dust-out')
    }
  })

  it('loses a task that is done and nothing else: the figures of the others stay', () => {
    const before = planOf()
    for (const { id } of all(before)) {
      const after = planOf({ done: [{ task: id }] })
      expect(all(after)).toEqual(all(before).filter((one) => one.id !== id))
    }
  })

  it('keeps a task of several parts until each is done, or the whole', () => {
    const cylinder = jobOf('bagless-cylinder')
    const ids = (done: readonly CleaningDone[]) => all(planOf({ job: cylinder, done })).map(({ id }) => id)
    expect(ids([{ task: 'wash-bin', part: 'bin' }])).toContain('wash-bin')
    expect(ids([{ task: 'wash-bin', part: 'bin' }, { task: 'wash-bin', part: 'cyclone' }])).not.toContain('wash-bin') // prettier-ignore
    expect(ids([{ task: 'wash-bin' }])).not.toContain('wash-bin')
  })

  it('takes a washed motor filter for a new one', () => {
    const filter = byId(planOf(), 'new-motor-filter')
    expect(filter.instead?.id).toBe('wash-filter')
    expect(filter.instead?.dries?.warm).toBe(24)
    expect(byId(planOf({ done: [{ task: 'wash-filter', part: 'pre-motor-filter' }] }), 'new-motor-filter')).toBeUndefined() // prettier-ignore
  })
})

describe('a filter that the kind says is washable', () => {
  it('is washed first, a new one in its place, and either ends both', () => {
    const bagless = jobOf('bagless-upright')
    const plan = planOf({ job: bagless })
    expect(plan.first.find(({ id }) => id === 'wash-filter')?.instead?.id).toBe('new-motor-filter')
    expect(plan.first.map(({ id }) => id)).not.toContain('new-motor-filter')
    for (const task of ['wash-filter', 'new-motor-filter'])
      expect(byId(planOf({ job: bagless, done: [{ task }] }), 'wash-filter')).toBeUndefined()
  })
})

describe('what belongs to a machine', () => {
  const idsOf = (blueprint: string, over: Partial<Job> = {}) => {
    const plan = planOf({ job: jobOf(blueprint, over) })
    return { first: plan.first.map(({ id }) => id), all: all(plan).map(({ id }) => id) }
  }

  it('a flat belt must be new, a cogged one only where it pays', () => {
    expect(idsOf('bagged-upright-one-motor').first).toContain('new-belt')
    expect(idsOf('bagged-upright-two-motors').first).not.toContain('new-belt')
    expect(idsOf('bagged-upright-two-motors').all).toContain('new-belt')
    expect(idsOf('bagged-cylinder').all).not.toContain('new-belt')
  })

  it('a hose with wires in it is wiped, never soaked, and its tubes are not washed', () => {
    expect(idsOf('electric-head-cylinder').all).toContain('wipe-hose')
    expect(idsOf('electric-head-cylinder').all).not.toContain('wash-hose')
    expect(idsOf('electric-head-cylinder').all).not.toContain('tubes')
    expect(idsOf('bagged-cylinder').all).toContain('wash-hose')
  })

  it('nothing is cleaned that is missing', () => {
    expect(idsOf('bagged-cylinder', { missing: ['hose'] }).all).not.toContain('wash-hose')
  })

  it('says which cover hides it, until that is off', () => {
    const job = jobOf('bagged-upright-one-motor')
    const motor = (off: readonly string[]) => byId(planOf({ job: { ...job, off } }), 'motor-dust').behind
    const cover = job.blueprint.parts.find(({ id }) => id === 'suction-motor')!.behind!
    expect(motor([])).toEqual([job.blueprint.covers.find(({ id }) => id === cover)!.name])
    expect(motor([cover])).toEqual([])
  })
})
