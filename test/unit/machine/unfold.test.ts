import { describe, expect, it } from 'vitest'
import { seededRandom } from '../../../src/base/random.ts'
import { foldNotes } from '../../../src/bench/fold.ts'
import { jobOf } from '../../../src/bench/job.ts'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import type { Blueprint } from '../../../src/blueprint/schema.ts'
import {
  instrumentFor,
  jobAfter,
  machineModel,
  machineView,
  onwardAfter,
  planProblem,
  possibleResults,
  resultUnder,
  suspectBelief,
} from '../../../src/machine/index.ts'
import type { Job } from '../../../src/machine/job.ts'
import { undertakingOf, type Undertaking } from '../../../src/machine/undertaking.ts'
import type { UnfoldStep } from '../../../src/machine/unfold.ts'
import { flexRefitted, gatesPassed, log } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const upright = blueprints.find(({ id }) => id === 'bagged-upright-one-motor')!

type Intake = Partial<Extract<NoteContentInput, { kind: 'added' }>>

const notesOf = (blueprint: Blueprint, intake: Intake, notes: readonly NoteContentInput[]) => {
  const { id, plate } = blueprint
  const added = {
    kind: 'added',
    name: 'Green',
    blueprint: id,
    plate,
    paidMinor: 0,
    currency: 'GBP',
    ...intake,
  } as const
  return [added, ...notes]
}

/** The job that a bench makes of these notes. */
const jobFrom = (blueprint: Blueprint, contents: readonly NoteContentInput[]): Job => {
  const notes = log(contents)
  return jobOf(foldNotes(notes), notes, blueprint)
}

/** The notes that a bench writes for a step: covers put back, covers taken off, then what was found or done. */
const notesFor = (blueprint: Blueprint, { move, result }: UnfoldStep): readonly NoteContentInput[] => {
  const check = blueprint.checks.find(({ id }) => id === move.id)
  const [repair = '', option = ''] = move.id.split(':')
  return [
    ...move.close.map((cover) => ({ kind: 'closed', cover, minutes: 1 }) as const),
    ...move.open.map((cover) => ({ kind: 'opened', cover, minutes: 1 }) as const),
    move.kind === 'repair'
      ? { kind: 'repaired', repair, option, minutes: 1, costMinor: 0 }
      : { kind: 'reading', check: move.id, result: result!, minutes: 1, instrument: instrumentFor(check!) },
  ]
}

const undertaking = (move: Pick<Undertaking, 'kind' | 'id'> & Partial<Undertaking>): Undertaking => ({
  close: [],
  open: [],
  ...move,
})

const behindMotorCover = ['back-cover', 'motor-cover']
const cases: readonly (readonly [string, Blueprint, Intake, readonly NoteContentInput[], Undertaking | null])[] = [
  ['a meter check', tinyBlueprint, { complaints: ['dead'] }, [], undertaking({ kind: 'check', id: 'pins-on' })],
  [
    'a check behind covers',
    tinyBlueprint,
    { complaints: ['dead'] },
    [],
    undertaking({ kind: 'check', id: 'motor-winding', open: behindMotorCover }),
  ],
  [
    'a run with the covers put back',
    tinyBlueprint,
    {},
    [...gatesPassed, ...behindMotorCover.map((cover) => ({ kind: 'opened', cover, minutes: 1 }) as const)],
    undertaking({ kind: 'check', id: 'run', close: behindMotorCover.toReversed() }),
  ],
  [
    'a repair',
    tinyBlueprint,
    { complaints: ['dead'] },
    [...gatesPassed],
    undertaking({ kind: 'repair', id: 'refit-flex:refit' }),
  ],
  ['the next move after a repair', tinyBlueprint, { complaints: ['dead'] }, [flexRefitted], null],
  ['the next move of a dead upright', upright, { complaints: ['dead'] }, [], null],
]

describe.each(cases)('unfolding %s', (_name, blueprint, intake, before, given) => {
  const contents = notesOf(blueprint, intake, before)
  const job = jobFrom(blueprint, contents)
  const move = given ?? undertakingOf(machineView(job).next)!
  const { results, lessLikely } = possibleResults(job, move)

  it('gives probabilities that sum to 1, likeliest first', () => {
    const chances = results.map(({ probability }) => probability)
    expect(chances.reduce((sum, p) => sum + p, lessLikely)).toBeCloseTo(1, 12)
    expect(chances).toEqual(chances.toSorted((a, b) => b - a))
    expect(chances.every((p) => p >= 0.02)).toBe(true)
    expect(results.length).toBeGreaterThan(0)
  })

  it('says after each result what the page says once the bench has noted it', () => {
    for (const { result } of results) {
      const step = { move, result }
      const { next, others } = machineView(jobFrom(blueprint, [...contents, ...notesFor(blueprint, step)]))
      const onward = onwardAfter(job, [step])
      expect(onward).toMatchObject({
        name: next.kind === 'repair' ? `${next.name}: ${next.optionName}` : next.name,
        expectedMinor: next.expectedMinor,
        minutes: next.minutes,
      })
      expect(onward.move).toEqual(undertakingOf(next))
      const goingOn = others.flatMap((other) => (other.kind === 'exit' ? [] : [other.expectedMinor]))
      if (next.kind !== 'exit') expect(onward.stop).toBeNull()
      else if (goingOn.length === 0) expect(onward.stop).toEqual({ exit: next.exit, moreMinor: null })
      else {
        expect(onward.stop?.exit).toBe(next.exit)
        expect(onward.stop?.moreMinor).toBe(next.expectedMinor - Math.max(...goingOn))
        expect(onward.stop?.moreMinor).toBeGreaterThanOrEqual(0)
      }
    }
  })
})

describe('unfolding', () => {
  it('goes on level after level, as if each had been noted', () => {
    const contents = notesOf(tinyBlueprint, { complaints: ['dead'] }, [])
    const job = jobFrom(tinyBlueprint, contents)
    const move = undertaking({ kind: 'check', id: 'pins-on' })
    const first: UnfoldStep = { move, result: { kind: 'open' } }
    const next = onwardAfter(job, [first]).move!
    const second: UnfoldStep = { move: next, result: possibleResults(jobAfter(job, first), next).results[0].result }
    const noted = [first, second].flatMap((step) => notesFor(tinyBlueprint, step))
    const view = machineView(jobFrom(tinyBlueprint, [...contents, ...noted]))
    const onward = onwardAfter(job, [first, second])
    expect([onward.move, onward.expectedMinor]).toEqual([undertakingOf(view.next), view.next.expectedMinor])
  })

  it('leads to selling when a run proves that it works', () => {
    const job = jobFrom(tinyBlueprint, notesOf(tinyBlueprint, {}, gatesPassed))
    const onward = onwardAfter(job, [
      { move: undertaking({ kind: 'check', id: 'run' }), result: { kind: 'grade', outcome: 'runs' } },
    ])
    expect(onward).toMatchObject({ name: 'Sell working', move: null, stop: { exit: 'sell-working' } })
  })

  it('gives the probabilities that virtual machines drawn from the suspects show: 4,000 draws, within 4 standard errors', () => {
    const job = jobFrom(tinyBlueprint, notesOf(tinyBlueprint, { complaints: ['dead'] }, []))
    const model = machineModel(job.blueprint, job.plate, job.history)
    const weights = [...suspectBelief(model, job).probability]
    const random = seededRandom(7)
    const draws = 4000
    const seen: Record<string, number> = {}
    for (let draw = 0; draw < draws; draw++) {
      const { kind } = resultUnder(model, random.index(weights), draw, 'pins-on', 0)
      seen[kind] = (seen[kind] ?? 0) + 1
    }
    const { results, lessLikely } = possibleResults(job, undertaking({ kind: 'check', id: 'pins-on' }))
    for (const kind of ['open', 'ohms', 'jumps']) {
      const own = results.filter(({ result }) => result?.kind === kind)
      const p = own.reduce((sum, { probability }) => sum + probability, 0)
      const error = 4 * Math.sqrt((Math.max(p, 0.01) * (1 - p)) / draws)
      expect(Math.abs((seen[kind] ?? 0) / draws - p)).toBeLessThan(error + lessLikely)
    }
  })

  it('enters a number that lies in its own band', () => {
    const job = jobFrom(upright, notesOf(upright, { complaints: ['dead'] }, []))
    const move = undertakingOf(machineView(job).next)!
    const model = machineModel(job.blueprint, job.plate, job.history)
    const bands = planProblem(model, job, suspectBelief(model, job).probability).bands.get(move.id)!
    const numbers = possibleResults(job, move).results.flatMap(({ id, result }) =>
      result?.kind === 'ohms' ? [{ id, ohm: result.resistanceOhm }] : [],
    )
    expect(numbers.length).toBeGreaterThan(0)
    for (const { id, ohm } of numbers) {
      const band = bands.find((one) => one.id === id)
      expect(bands.filter((one) => 'lowOhm' in one && one.lowOhm <= ohm && ohm < one.highOhm)).toEqual([band])
    }
  })

  it('knows nothing of a check that is not in the blueprint', () => {
    const job = jobFrom(tinyBlueprint, notesOf(tinyBlueprint, {}, []))
    expect(possibleResults(job, undertaking({ kind: 'check', id: 'nothing' }))).toEqual({ results: [], lessLikely: 0 })
  })
})
