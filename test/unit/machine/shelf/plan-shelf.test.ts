import { describe, expect, it } from 'vitest'
import { jobOf } from '../../../../src/bench/job.ts'
import { foldNotes } from '../../../../src/bench/fold.ts'
import { noteContentSchema, type Note } from '../../../../src/bench/note.ts'
import { withShelf } from '../../../../src/bench/shelf/at-hand.ts'
import { foldPart, type PartState } from '../../../../src/bench/shelf/part-state.ts'
import { partContentSchema, type PartContentInput } from '../../../../src/bench/shelf/part-note.ts'
import { blueprintById } from '../../../../src/blueprint/library.ts'
import { defaultCosts } from '../../../../src/machine/costs.ts'
import { machineModel, machineView, planProblem, suspectBelief } from '../../../../src/machine/index.ts'
import type { Job } from '../../../../src/machine/job.ts'
import { partNet } from '../../../../src/machine/parts-for-sale.ts'

const blueprint = blueprintById('bagged-upright-two-motors')!
const at = '2026-03-14T10:00:00.000Z'
const notes: readonly Note[] = [
  {
    id: 'n1',
    machine: 'm1',
    seq: 1,
    at,
    content: noteContentSchema.parse({
      kind: 'added',
      name: 'Green',
      blueprint: blueprint.id,
      plate: blueprint.plate,
      paidMinor: 400,
      currency: 'GBP',
      complaints: ['dead'],
    }),
  },
]
const state = foldNotes(notes)
const bare = jobOf(state, notes, blueprint)

const part = (put: Partial<Extract<PartContentInput, { kind: 'put' }>>, id = 'p1'): PartState =>
  foldPart([
    {
      id: `${id}.1`,
      log: id,
      seq: 1,
      at,
      content: partContentSchema.parse({ kind: 'put', name: 'Motor', partKind: 'motor', currency: 'GBP', ...put }),
    },
  ])
const with_ = (...parts: readonly PartState[]): Job => withShelf(bare, state, { parts, region: 'UK' })
const salvagedMotor = (job: Job): number => {
  const model = machineModel(blueprint, state.plate)
  const { problem } = planProblem(model, job, suspectBelief(model, job).probability)
  return problem.repairs.find(({ id }) => id === 'suction-motor-swap:salvaged')!.costMinor
}
const motor = {
  spec: { voltageV: 230, powerW: 1080 },
  fetchesMinor: 1500,
  costMinor: 210,
  origin: { kind: 'bought', where: 'a yard' },
} as const

describe('a plan with a shelf', () => {
  it('reckons a fitting part at what it would net if it were sold, not at what it stands at', () => {
    expect(salvagedMotor(with_(part(motor)))).toBe(Math.round(partNet(1500, state.hourMinor, defaultCosts('UK'))))
  })

  it('what would bring nothing costs nothing to use', () => {
    expect(salvagedMotor(with_(part({ ...motor, fetchesMinor: 50 })))).toBe(0)
  })

  it('keeps the cost of finding one where the shelf holds none, one of other power, or one kept for another machine', () => {
    const found = salvagedMotor(bare)
    const kept = { ...part(motor), reservedFor: 'another' }
    for (const job of [with_(), with_(part({ ...motor, spec: { powerW: 300 } })), with_(kept)])
      expect(salvagedMotor(job)).toBe(found)
    expect(salvagedMotor(with_({ ...kept, reservedFor: 'm1' }))).toBeLessThan(found)
  })

  it('does not reckon with a part of which nothing was compared, with a worn one, or in other money', () => {
    const found = salvagedMotor(bare)
    for (const one of [
      part({ ...motor, spec: {} }),
      part({ ...motor, condition: 'worn' }),
      part({ ...motor, currency: 'EUR' }),
    ])
      expect(salvagedMotor(with_(one))).toBe(found)
  })

  it('does not use up what would bring more than another one costs', () => {
    expect(salvagedMotor(with_(part({ ...motor, fetchesMinor: 30_000 })))).toBe(salvagedMotor(bare))
  })

  it('the list of what to strip adds up to the exit “break for parts”, in order of money per minute', () => {
    const view = machineView(bare)
    const exit = view.exits.find(({ id }) => id === 'break-for-parts')!
    expect(view.strip.totalMinor).toBeCloseTo(exit.expectedMinor, 6)
    const worthIt = view.strip.lines.filter(({ isWorthIt }) => isWorthIt).map(({ perMinuteMinor }) => perMinuteMinor)
    expect(worthIt.length).toBeGreaterThan(3)
    expect(worthIt).toEqual(worthIt.toSorted((a, b) => b - a))
  })
})
