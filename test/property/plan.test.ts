import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkPlanProblem, plan, type PlanProblem } from '../../src/engines/plan/index.ts'
import { exactWorth, worthOfFollowing } from '../support/brute-plan.ts'
import { randomPlan } from '../support/random-plan.ts'

const runs = { numRuns: 300, seed: 20 }
const slack = 1e-7

describe('plan on small random problems', () => {
  it('accepts them all', () => {
    fc.assert(
      fc.property(randomPlan, (problem) => {
        expect(checkPlanProblem(problem)).toMatchObject({ kind: 'ok' })
      }),
      runs,
    )
  })

  it('encloses the optimum found by plain recursion', () => {
    fc.assert(
      fc.property(randomPlan, (problem) => {
        const exact = exactWorth(problem)
        const answer = plan(problem)
        expect(answer.lowerMinor).toBeLessThanOrEqual(exact + slack)
        expect(answer.upperMinor).toBeGreaterThanOrEqual(exact - slack)
      }),
      runs,
    )
  })

  it('earns its lower bound or more when it is asked again after every move, but for rare cases', () => {
    let followed = 0
    let promised = 0
    let short = 0
    fc.assert(
      fc.property(randomPlan, (problem) => {
        const { lowerMinor } = plan(problem)
        const worth = worthOfFollowing(problem, (now) => plan(now).best)
        expect(worth).toBeLessThanOrEqual(exactWorth(problem) + slack)
        followed += worth
        promised += lowerMinor
        if (worth < lowerMinor - slack) short++
      }),
      runs,
    )
    expect(followed).toBeGreaterThanOrEqual(promised)
    expect(short).toBeLessThan(runs.numRuns / 100)
  })

  it('gives the same answer to the same question', () => {
    fc.assert(
      fc.property(randomPlan, (problem) => {
        expect(plan(structuredClone(problem))).toEqual(plan(problem))
      }),
      { ...runs, numRuns: 50 },
    )
  })

  it('does not care for the order of the suspects', () => {
    fc.assert(
      fc.property(randomPlan, fc.array(fc.nat(), { minLength: 11, maxLength: 11 }), (problem, keys) => {
        const order = [...problem.suspects.keys()].sort((a, b) => keys[a] - keys[b])
        expect(plan(reordered(problem, order))).toEqual(plan(problem))
      }),
      runs,
    )
  })

  it('scales with the money', () => {
    fc.assert(
      fc.property(randomPlan, fc.constantFrom(0.25, 2, 7), (problem, factor) => {
        const once = plan(problem)
        const scaled = plan(inMoney(problem, factor))
        const near = (value: number): number => expect.closeTo(value * factor, 6) as number
        expect(scaled.lowerMinor).toEqual(near(once.lowerMinor))
        expect(scaled.upperMinor).toEqual(near(once.upperMinor))
        expect(scaled.ranked.map((move) => move.expectedMinor)).toEqual(
          once.ranked.map((move) => near(move.expectedMinor)),
        )
        expect(scaled.exits.map((exit) => exit.expectedMinor)).toEqual(
          once.exits.map((exit) => near(exit.expectedMinor)),
        )
      }),
      runs,
    )
  })

  it('ranks best first, and the best move is the one it names', () => {
    fc.assert(
      fc.property(randomPlan, (problem) => {
        const { best, lowerMinor, ranked } = plan(problem)
        expect(ranked[0]).toMatchObject({ move: best, expectedMinor: lowerMinor })
        ranked.slice(1).forEach((move, i) => {
          expect(move.expectedMinor).toBeLessThanOrEqual(ranked[i].expectedMinor + slack)
        })
      }),
      runs,
    )
  })
})

const reordered = (problem: PlanProblem, order: readonly number[]): PlanProblem => ({
  ...problem,
  suspects: order.map((s) => problem.suspects[s]),
  checks: problem.checks.map((check) => ({ ...check, likelihood: order.map((s) => check.likelihood[s]) })),
  exits: problem.exits.map((exit) => ({ ...exit, payoffMinor: order.map((s) => exit.payoffMinor[s]) })),
})

const inMoney = (problem: PlanProblem, factor: number): PlanProblem => ({
  ...problem,
  hourMinor: problem.hourMinor * factor,
  checks: problem.checks.map((check) => ({ ...check, costMinor: check.costMinor * factor })),
  repairs: problem.repairs.map((repair) => ({
    ...repair,
    costMinor: repair.costMinor * factor,
    breakCostMinor: repair.breakCostMinor * factor,
  })),
  exits: problem.exits.map((exit) => ({ ...exit, payoffMinor: exit.payoffMinor.map((payoff) => payoff * factor) })),
})
