import { describe, expect, it } from 'vitest'
import { benchOrder, hourOffer, type HourOffer, type Offered } from '../../../src/bench/next-hour.ts'
import { foldNotes } from '../../../src/bench/fold.ts'
import { jobOf } from '../../../src/bench/job.ts'
import { machineView } from '../../../src/machine/index.ts'
import { added, gatesPassed, log, runsWell } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const carryOn = (minorPerHour: number): HourOffer => ({ kind: 'carry-on', minorPerHour })
const ready = (expectedMinor: number): HourOffer => ({ kind: 'ready', exit: 'scrap', expectedMinor })
const machine = (id: string, offer: HourOffer | null, currency: Offered['currency'] = 'GBP'): Offered => ({
  id,
  currency,
  offer,
})

describe('the order of the bench', () => {
  it('is what an hour brings, then what an exit fetches, then what is not known', () =>
    expect(
      benchOrder([
        machine('poor', carryOn(120)),
        machine('unknown', null),
        machine('cheap', ready(300)),
        machine('rich', carryOn(2400)),
        machine('dear', ready(5200)),
      ]),
    ).toEqual({ carryOn: ['rich', 'poor'], ready: ['dear', 'cheap'], unknown: ['unknown'] }))
  it('keeps the order of ties', () =>
    expect(benchOrder([machine('a', carryOn(5)), machine('b', carryOn(5))]).carryOn).toEqual(['a', 'b']))
  it('does not weigh pounds against dollars: the currency of most machines comes first', () =>
    expect(
      benchOrder([machine('usd', carryOn(900), 'USD'), machine('low', carryOn(100)), machine('high', carryOn(200))])
        .carryOn,
    ).toEqual(['high', 'low', 'usd']))
})

describe('what a machine offers for the next hour', () => {
  const viewAfter = (...notes: Parameters<typeof log>[0][number][]) => {
    const all = log([added(), ...notes])
    return machineView(jobOf(foldNotes(all), all, tinyBlueprint))
  }
  it('is the gain of carrying on over its hours', () => {
    const { next, worth } = viewAfter()
    // £9.00 more in three quarters of an hour is £12.00 an hour.
    const plain = { ...worth, asItStandsMinor: 1000, carryOnMinor: 1900, expectedMin: 45 }
    expect(hourOffer({ next, worth: plain })).toEqual({ kind: 'carry-on', minorPerHour: 1200 })
  })
  it('is an exit once a run has proved that it works', () => {
    const view = viewAfter(...gatesPassed, runsWell)
    expect(hourOffer(view)).toEqual({ kind: 'ready', exit: 'sell-working', expectedMinor: view.next.expectedMinor })
  })
})
