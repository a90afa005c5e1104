import { describe, expect, it } from 'vitest'
import { blueprints } from '../../src/blueprint/library.ts'
import { plan } from '../../src/engines/plan/index.ts'
import { machineModel, planProblem, suspectBelief } from '../../src/machine/index.ts'
import type { Job } from '../../src/machine/job.ts'
import { simulatedMoney } from '../support/simulate-policy.ts'

const machines = 10_000
const seed = 1963

/** One blueprint of each architecture: not the variants for another mains, another plug or an earth. */
const ten = blueprints.filter(({ id }) => !/-(120-v|moulded-plug|earthed)/.test(id))
/** Sums of ten thousand figures in pence agree to this where all of them are the same. */
const roundingMinor = 1e-6

const jobOf = (blueprint: (typeof ten)[number]): Job => ({
  blueprint,
  plate: blueprint.plate,
  complaints: ['dead'],
  missing: [],
  events: [],
  off: [],
  hourMinor: 800,
})

describe('what the plan says it is worth', () => {
  it('is tried on ten blueprints', () => {
    expect(ten).toHaveLength(10)
  })

  it.each(ten)('is the mean money on virtual dead machines of $id, to three standard errors', (blueprint) => {
    const job = jobOf(blueprint)
    const model = machineModel(blueprint, blueprint.plate)
    const { problem } = planProblem(model, job, suspectBelief(model, job).probability)
    const answer = plan(problem)
    const money = simulatedMoney(problem, answer.policy, machines, seed)
    const mean = money.reduce((sum, x) => sum + x, 0) / machines
    const spread = Math.sqrt(money.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (machines - 1))
    const standardError = spread / Math.sqrt(machines)
    expect(Math.abs(mean - answer.lowerMinor)).toBeLessThan(3 * standardError + roundingMinor)
    expect(Math.abs(spread - answer.spreadMinor)).toBeLessThan(0.1 * answer.spreadMinor + roundingMinor)
  })
})
