import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { blueprintById } from '../../src/blueprint/library.ts'
import { functionsOf } from '../../src/machine/functions/functions-of.ts'
import { functionChecks } from '../../src/machine/functions/function-checks.ts'
import { triedResults } from '../../src/machine/functions/tried-result.ts'
import { machineModel } from '../../src/machine/index.ts'
import type { Job, JobEvent } from '../../src/machine/job.ts'
import { suspectBelief } from '../../src/machine/suspects.ts'

const blueprint = blueprintById('tub-by-pass')!
const model = machineModel(blueprint, blueprint.plate)
const made = functionsOf(blueprint).functions.filter(({ isReading }) => !isReading)

const jobWith = (events: readonly JobEvent[]): Job => ({
  blueprint,
  plate: blueprint.plate,
  complaints: [],
  missing: [],
  events,
  off: [],
  hourMinor: 800,
})

/** One result for each of some functions, in some order; and the same in another order. */
const trials = fc
  .subarray(made.map(({ id }) => id))
  .chain((ids) =>
    fc.tuple(...ids.map((id) => fc.record({ id: fc.constant(id), result: fc.constantFrom(...triedResults) }))),
  )
  .map((all) => all.map(({ id, result }): JobEvent => ({ kind: 'tried', note: `tried ${id}`, function: id, result })))
  .chain((events) => fc.tuple(fc.constant(events), fc.shuffledSubarray(events, { minLength: events.length })))

describe('functions tried one after another, nothing being worked on in between', () => {
  it('say the same in any order: of the machine, and of each function', () => {
    fc.assert(
      fc.property(trials, ([one, other]) => {
        const [a, b] = [one, other].map((events) => suspectBelief(model, jobWith(events)).probability)
        a.forEach((p, s) => expect(b[s]).toBeCloseTo(p, 12))
        expect(functionChecks(jobWith(other))).toEqual(functionChecks(jobWith(one)))
      }),
      { numRuns: 40, seed: 20260314 },
    )
  })

  it('make a fault of a function that is bad no less likely, and of one that is good no likelier', () => {
    const chanceOf = (events: readonly JobEvent[], fault: number): number => {
      const { probability } = suspectBelief(model, jobWith(events))
      return model.sets.reduce((sum, set, s) => sum + (set.includes(fault) ? probability[s] : 0), 0)
    }
    for (const { id, check } of made) {
      for (const name of Object.keys(check.under)) {
        const fault = blueprint.faults.findIndex((one) => one.id === name)
        const after = (result: 'good' | 'bad') => chanceOf([{ kind: 'tried', note: 't', function: id, result }], fault)
        expect(after('bad'), name).toBeGreaterThan(chanceOf([], fault))
        expect(after('good'), name).toBeLessThan(chanceOf([], fault))
      }
    }
  })
})
