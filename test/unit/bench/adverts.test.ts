import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { adverts } from '../../../src/bench/adverts/adverts.ts'
import { buyAdvert, type BuyAdvert } from '../../../src/bench/adverts/buy-advert.ts'
import { calibrationOf, comparedWith, type Compared } from '../../../src/bench/adverts/compared.ts'
import { guessOf } from '../../../src/bench/adverts/guess-of.ts'
import type { CommandDeps } from '../../../src/bench/commands.ts'
import { costsOf } from '../../../src/bench/costs.ts'
import { foldNotes } from '../../../src/bench/fold.ts'
import { jobOf } from '../../../src/bench/job.ts'
import { defaultSettings } from '../../../src/bench/settings.ts'
import { buyingView, type AdvertInput } from '../../../src/machine/buying/index.ts'
import { machineModel, machineView, suspectBelief } from '../../../src/machine/index.ts'
import { emptyBench } from '../../story/use-case-writer.ts'
import { advertOf, termsOf } from '../../support/adverts.ts'
import { log } from '../../support/notes.ts'

const upright = blueprintById('bagged-upright-two-motors')!

/** A bench with one kept advert, and what buying it asks. */
const kept = async (own: Partial<AdvertInput> = {}, blueprint = upright) => {
  const deps = emptyBench()
  const advert = advertOf(blueprint, own)
  const view = buyingView(advert, termsOf(blueprint, { effort: 0.05 }))
  const content = { kind: 'weighed' as const, name: 'Grey one', advert, guess: guessOf(view) }
  const outcome = await adverts.begin(deps, content, 'a1')
  if (outcome.kind !== 'done') throw new Error(outcome.kind)
  return { deps, advert, view }
}
const asked: BuyAdvert = { id: 'm1', version: 1, paidMinor: 1200 }

describe('the machine of an advert', () => {
  it.each<readonly [string, string, Partial<AdvertInput>]>([
    [
      'a dead upright, answered and looked at, scuffed',
      upright.id,
      {
        words: 'just stopped, been in the shed',
        complaints: undefined,
        answers: [{ question: 'moment', answer: 'moved' }],
        looked: [{ check: 'pins-on', result: { kind: 'open' } }],
        condition: 'fair',
        missing: ['hose'],
        ageYears: 11,
        wear: 'heavy',
      },
    ],
    [
      'a tub that lost suction, said to have been wet, by the hour',
      'tub-by-pass',
      {
        complaints: ['weak-suction'],
        claims: ['wet'],
        answers: [{ question: 'moment', answer: 'faded' }],
        condition: 'poor',
        wanted: { kind: 'an-hour', minor: 1100 },
      },
    ],
  ])('is believed and planned as the advert was: %s', { timeout: 60_000 }, async (_what, id, own) => {
    const blueprint = blueprintById(id)!
    const { deps, advert } = await kept({ ...own, askingMinor: 0, distanceKm: 0 }, blueprint)
    const outcome = await buyAdvert(deps, 'a1', { ...asked, paidMinor: 0 })
    if (outcome.kind !== 'done') throw new Error(outcome.kind === 'conflict' ? outcome.kind : outcome.problems.map(problemText).join()) // prettier-ignore
    const { state, notes } = outcome.machine
    const costs = costsOf(defaultSettings)
    const job = jobOf(state, notes, blueprint, 'average', costs)
    const view = buyingView(advert, termsOf(blueprint, { costs }))
    const machine = machineView(job)
    // One model: to the rounding of sums in another order.
    expect(view.nothingWrong).toBeCloseTo(suspectBelief(machineModel(blueprint, job.plate, job.history), job).probability[0], 12) // prettier-ignore
    for (const { id: fault, probability } of view.faults) expect(machine.faults[fault]).toBeCloseTo(probability, 12)
    const wantedAndWay = view.travel.minor
    expect(machine.worth.carryOnMinor).toBeCloseTo(view.ceiling.onAverageMinor + wantedAndWay, 6)
  })

  it('takes over what was said, and the checks made on the spot are readings of it', async () => {
    const { deps } = await kept({
      words: 'stopped dead',
      answers: [{ question: 'moment', answer: 'bang' }],
      looked: [{ check: 'pins-on', result: { kind: 'open' } }],
    })
    const outcome = await buyAdvert(deps, 'a1', { ...asked, source: 'boot-sale' })
    expect(outcome).toMatchObject({
      kind: 'done',
      machine: {
        state: { id: 'm1', name: 'Grey one', advert: 'a1', source: 'boot-sale', paidMinor: 1200 },
        notes: [
          { content: { kind: 'added', claim: 'stopped dead', answers: [{ question: 'moment', answer: 'bang' }] } },
          { content: { kind: 'reading', check: 'pins-on', result: { kind: 'open' } } },
        ],
      },
      advert: { state: { decided: { kind: 'bought', machine: 'm1', paidMinor: 1200 } } },
    })
    // 8 km there and back at the usual cost and pace of the settings.
    const { perKmMinor, minutesPerKm, collectMin } = costsOf(defaultSettings)
    expect(outcome.kind === 'done' && outcome.machine.state).toMatchObject({
      spentMinor: Math.round(16 * perKmMinor),
      minutes: Math.round(16 * minutesPerKm + collectMin),
    })
  })

  it('is bought once: the same again is done, another is refused, an old version conflicts', async () => {
    const { deps } = await kept()
    expect((await buyAdvert(deps, 'a1', asked)).kind).toBe('done')
    expect((await buyAdvert(deps, 'a1', asked)).kind).toBe('done')
    expect((await buyAdvert(deps, 'a1', { ...asked, id: 'm2' })).kind).toBe('conflict')
    expect(await buyAdvert(deps, 'a1', { ...asked, id: 'm2', version: 2 })).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'bought-already' }],
    })
    expect(await deps.store.notes('m2')).toEqual([])
    expect((await buyAdvert(deps, 'a9', asked)).kind).toBe('missing')
  })

  it('or neither: a machine id that is taken leaves the advert open', async () => {
    const { deps } = await kept()
    await buyAdvert(deps, 'a1', asked)
    const other = { kind: 'weighed' as const, name: 'Other', advert: advertOf(upright), guess: (await adverts.document(deps, 'a1'))!.state.guess } // prettier-ignore
    await adverts.begin(deps, other, 'a2')
    expect(await buyAdvert(deps, 'a2', asked)).toMatchObject({ kind: 'refused', problems: [{ code: 'id-taken' }] })
    expect((await adverts.document(deps, 'a2'))!.state.decided).toBeNull()
  })
})

const stateAfter = async (deps: CommandDeps) => (await adverts.document(deps, 'a1'))!.state

describe('how the guess compared', () => {
  it('is reckoned by hand: money above own time at the price paid, fault, price and loss', async () => {
    const { deps, view } = await kept()
    await buyAdvert(deps, 'a1', { ...asked, travelMinor: 200, travelMin: 30 })
    const notes = [
      ...(await deps.store.notes('m1')),
      ...log([
        { kind: 'spent', costMinor: 500, minutes: 60, text: 'parts' },
        { kind: 'confirmed', fault: view.faults[1].id },
        { kind: 'left', exit: 'sell-for-spares', receivedMinor: 2500, minutes: 30 },
      ]).map((note, i) => ({ ...note, seq: i + 2 })),
    ]
    const state = await stateAfter(deps)
    expect(comparedWith(state, foldNotes(notes.slice(0, 3)), upright)).toBeNull()
    // 25.00 less 12.00, 2.00 and 5.00; two hours at 8.00.
    expect(comparedWith(state, foldNotes(notes), upright)).toMatchObject({
      gotMinor: 2500 - 1200 - 200 - 500 - 1600,
      gotMin: 120,
      guessedMinor: state.guess.expectedMinor + 1500 - 1200,
      lost: true,
      belowCeiling: 1200 <= state.guess.ceilingMinor,
      found: [view.faults[1].id],
      foreseen: true,
    })
  })

  it('sums up: means, and losses foretold beside losses that came', () => {
    const one = (own: Partial<Compared>): Compared => ({
      advert: 'a', machine: 'm', name: 'n', currency: 'GBP', paidMinor: 100, ceilingMinor: 200, belowCeiling: true,
      guessedMinor: 1000, gotMinor: 800, spreadMinor: 500, guessedMin: 60, gotMin: 70, lossChance: 0.1, lost: false,
      found: ['f'], foreseen: true, ...own,
    }) // prettier-ignore
    const all = [
      one({}),
      one({ gotMinor: -400, lost: true, lossChance: 0.6, foreseen: false }),
      one({ guessedMinor: 400, gotMinor: 200, lossChance: 0.25, foreseen: null, belowCeiling: false }),
      one({ currency: 'EUR' }),
    ]
    const [pounds, euros] = calibrationOf(all)
    expect(pounds).toMatchObject({
      count: 3,
      guessedMinor: 800,
      gotMinor: 200,
      losses: 1,
      byChance: [
        { count: 1, losses: 0 },
        { count: 2, losses: 1 },
      ],
      belowCeiling: 2,
      foreseen: 1,
      faultKnown: 2,
    })
    expect(pounds.lossesForetold).toBeCloseTo(0.95, 12)
    expect(euros).toMatchObject({ currency: 'EUR', count: 1 })
    expect(calibrationOf([])).toEqual([])
  })
})
