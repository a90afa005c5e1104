import { describe, expect, it } from 'vitest'
import { blueprintById } from '../../../../src/blueprint/library.ts'
import { blueprintSchema, type Blueprint } from '../../../../src/blueprint/schema.ts'
import { soundTakenForBad } from '../../../../src/facts/function-kind.ts'
import { functionsOf } from '../../../../src/machine/functions/functions-of.ts'
import { machineModel, machineView } from '../../../../src/machine/index.ts'
import type { Job, JobEvent } from '../../../../src/machine/job.ts'
import { slips, suspectBelief } from '../../../../src/machine/suspects.ts'
import { oneFaultBlueprint } from '../../../support/one-fault-blueprint.ts'
import { tinyBlueprint } from '../../../support/tiny-blueprint.ts'

/** The owner of a machine with a dead lamp says so six times in ten: invented, to be followed by hand. */
const lampShows = 0.6

const withLamp = (blueprint: Blueprint): Blueprint =>
  blueprintSchema.parse({
    ...blueprint,
    id: `${blueprint.id}-with-lamp`,
    parts: [...blueprint.parts, { id: 'headlamp', name: 'Headlamp', does: 'Lights', group: 'control' }],
    faults: [
      ...blueprint.faults,
      {
        id: 'lamp-dead',
        part: 'headlamp',
        name: 'Headlamp dead',
        how: 'Burnt out',
        rate: { ...blueprint.faults[0].rate, perHundred: 7 },
        complaints: { 'lamp-wrong': lampShows },
      },
    ],
  })

const jobOf = (blueprint: Blueprint, events: readonly JobEvent[]): Job => ({
  blueprint,
  plate: blueprint.plate,
  complaints: [],
  missing: [],
  events,
  off: [],
  hourMinor: 800,
})

const tried = (name: string, result: 'good' | 'bad' | 'not-there' | 'cannot-tell'): JobEvent => ({
  kind: 'tried',
  note: `tried ${name}`,
  function: name,
  result,
})

const chance = (blueprint: Blueprint, events: readonly JobEvent[], fault: string): number => {
  const model = machineModel(blueprint, blueprint.plate)
  const { probability } = suspectBelief(model, jobOf(blueprint, events))
  const index = blueprint.faults.findIndex(({ id }) => id === fault)
  return model.sets.reduce((sum, set, s) => sum + (set.includes(index) ? probability[s] : 0), 0)
}

/** Bayes for one test of one condition, as any handbook of diagnosis has it: prior, sensitivity, false positives. */
const bayes = (prior: number, withIt: number, without: number): number =>
  (prior * withIt) / (prior * withIt + (1 - prior) * without)

/** A slip of the pen makes either answer as likely as the other. */
const slipped = (p: number): number => (1 - slips.graded) * p + slips.graded / 2

describe('a lamp tried on a machine of two independent faults', () => {
  const blueprint = withLamp(oneFaultBlueprint)
  const prior = chance(blueprint, [], 'lamp-dead')
  const badWhenSound = soundTakenForBad.value

  it('found bad makes its fault likelier, by the handbook', () => {
    const byHand = bayes(prior, slipped(lampShows), slipped(badWhenSound))
    expect(chance(blueprint, [tried('lamps', 'bad')], 'lamp-dead')).toBeCloseTo(byHand, 10)
    expect(byHand).toBeGreaterThan(8 * prior)
  })

  it('found good makes its fault less likely, by the handbook', () => {
    const byHand = bayes(prior, slipped(1 - lampShows), slipped(1 - badWhenSound))
    expect(chance(blueprint, [tried('lamps', 'good')], 'lamp-dead')).toBeCloseTo(byHand, 10)
    expect(byHand).toBeLessThan(prior / 2)
  })

  it('leaves the other fault as likely as it was', () => {
    expect(chance(blueprint, [tried('lamps', 'bad')], 'flex-open')).toBeCloseTo(chance(blueprint, [], 'flex-open'), 10)
  })

  it.each(['not-there', 'cannot-tell'] as const)('%s is no evidence', (result) => {
    expect(chance(blueprint, [tried('lamps', result)], 'lamp-dead')).toBe(prior)
  })

  it('under a name that no function has says nothing', () => {
    expect(chance(blueprint, [tried('whistle', 'bad')], 'lamp-dead')).toBe(prior)
  })
})

describe('a function that needs the motor', () => {
  const blueprint = withLamp(tinyBlueprint)
  const model = machineModel(blueprint, blueprint.plate)
  const badUnder = (id: string, fault: string): number => {
    const { check } = functionsOf(blueprint).functions.find((one) => one.id === id)!
    const index = blueprint.faults.findIndex((one) => one.id === fault)
    const suspect = model.sets.findIndex((set) => set.length === 1 && set[0] === index)
    return model.graded(check, suspect)[1]
  }

  it('is hardly ever bad where nothing runs: that is another outcome, and two share what the circuit leaves', () => {
    expect(badUnder('lamps', 'flex-open')).toBeCloseTo((1 - 0.98) / 2, 12)
    expect(badUnder('lamps', 'motor-leaks')).toBeCloseTo(soundTakenForBad.value, 12)
    expect(badUnder('lamps', 'lamp-dead')).toBeCloseTo(lampShows, 12)
  })

  it('is bad where nothing runs if that is a failure of its own', () => {
    expect(badUnder('switch', 'flex-open')).toBeCloseTo(0.98, 12)
    expect(badUnder('switch', 'switch-open')).toBeCloseTo(0.98, 12)
    expect(badUnder('switch', 'lamp-dead')).toBeCloseTo(soundTakenForBad.value, 12)
  })

  it('so a dark lamp speaks for the lamp and against a dead machine, a switch that fails for the whole way to the motor', () => {
    const moved = (name: string, fault: string): number =>
      chance(blueprint, [tried(name, 'bad')], fault) / chance(blueprint, [], fault)
    expect(moved('lamps', 'lamp-dead')).toBeGreaterThan(5)
    expect(moved('lamps', 'flex-open')).toBeLessThan(1)
    for (const fault of ['flex-open', 'switch-open', 'motor-worn']) expect(moved('switch', fault)).toBeGreaterThan(1)
  })
})

describe('a failure on a machine of the library', () => {
  const upright = blueprintById('bagged-upright-one-motor')!

  it('changes the suspects, stands among their grounds, and the plan goes on with it', () => {
    const runs: JobEvent = {
      kind: 'reading',
      note: 'first run',
      check: 'run-first',
      result: { kind: 'grade', outcome: 'runs' },
      instrument: 'budget-multimeter',
    }
    const before = machineView(jobOf(upright, [runs]))
    const after = machineView(jobOf(upright, [runs, tried('brush-stops', 'bad')]))
    const chanceIn = (view: typeof before): number => view.faults['belt-lifter-stuck'] ?? 0
    expect(chanceIn(after)).toBeGreaterThan(15 * chanceIn(before))
    const suspect = after.suspects.find(({ id }) => id === 'belt-lifter-stuck')
    expect(suspect?.grounds[0]).toMatchObject({ note: 'tried brush-stops', text: 'Tried: brush stops' })
    expect(after.next.name).not.toBe('')
    expect(after.worth.carryOnMinor).not.toBe(before.worth.carryOnMinor)
  })
})
