import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { basePolicy, baseValue } from '../../src/engines/plan/base-policy.ts'
import { baseWorkOf } from '../../src/engines/plan/base-work.ts'
import { plan, planProblemSchema, type PlanProblem, type PolicyPoint } from '../../src/engines/plan/index.ts'
import { graphOf } from '../../src/engines/plan/policy-graph.ts'
import { kernelOf, likeliest } from '../../src/engines/plan/kernel.ts'
import { bestFollowUps, lookAheadOf, valueOfStep } from '../../src/engines/plan/look-ahead.ts'
import { checkIsOpen, rulesOf } from '../../src/engines/plan/rules.ts'
import { goalsOf, targetsOf } from '../../src/engines/plan/targets.ts'
import { benchLikePlan } from '../support/bench-like-plan.ts'
import { exactWorth } from '../support/brute-plan.ts'
import { endingsOf } from '../support/follow-policy.ts'

const runs = { numRuns: 300, seed: 7 }
const slack = 1e-8

/** The base policy's value at the start, and the policy it stands for by its names. */
const baseOf = (problem: PlanProblem): { readonly value: number; readonly policy: readonly PolicyPoint[] } => {
  const rules = rulesOf(problem)
  const kernel = kernelOf(problem)
  const goals = goalsOf(rules, kernel)
  const work = baseWorkOf(rules, kernel, targetsOf(rules, kernel, goals))
  const value = baseValue(work, kernel.belief, 1, rules.start)
  return { value, policy: graphOf(problem, basePolicy(work, work, kernel.belief, 1, rules.start)) }
}

describe('the base policy', () => {
  it('is worth what following it along every path earns', () => {
    let repaired = 0
    fc.assert(
      fc.property(benchLikePlan(4), (problem) => {
        const { value, policy } = baseOf(problem)
        if (policy.some(({ move }) => move.kind === 'repair')) repaired++
        const earned = endingsOf(problem, policy).reduce((sum, end) => sum + end.probability * end.moneyMinor, 0)
        expect(Math.abs(value - earned)).toBeLessThan(slack)
      }),
      runs,
    )
    expect(repaired).toBeGreaterThan(runs.numRuns / 10)
  })

  it('is never worth more than the plan, nor the plan more than the optimum', () => {
    fc.assert(
      fc.property(benchLikePlan(2), (problem) => {
        const answer = plan(problem)
        const exact = exactWorth(problem)
        expect(baseOf(problem).value).toBeLessThanOrEqual(answer.lowerMinor + slack)
        expect(answer.lowerMinor).toBeLessThanOrEqual(exact + slack)
        expect(answer.upperMinor).toBeGreaterThanOrEqual(exact - slack)
      }),
      { ...runs, numRuns: 100 },
    )
  })
})

describe('a look-ahead that chooses on a few suspects only', () => {
  it('is still never worth more than the optimum', () => {
    let fewer = 0
    fc.assert(
      fc.property(benchLikePlan(2), (problem) => {
        const rules = rulesOf(problem)
        const whole = kernelOf(problem)
        const near = likeliest(whole, 0.5, 1)
        if (near.size < whole.size) fewer++
        const ahead = lookAheadOf(rules, whole, near)
        const exact = exactWorth(problem)
        problem.checks.forEach((_, index) => {
          if (!checkIsOpen(rules, rules.start, index)) return
          const follow = bestFollowUps(ahead, { kind: 'check', index }, Infinity)
          const value = valueOfStep(ahead, 0, { kind: 'check', index }, follow, 'whole')
          expect(value).toBeLessThanOrEqual(exact + slack)
        })
      }),
      { ...runs, numRuns: 100 },
    )
    expect(fewer).toBeGreaterThan(10)
  })
})

type Action = { readonly weight: number; readonly costMinor: number; readonly success: number }

const randomActions = fc.array(
  fc.record({
    weight: fc.double({ min: 0.1, max: 1, noNaN: true }),
    costMinor: fc.double({ min: 0.05, max: 2, noNaN: true }),
    success: fc.constantFrom(1, 0.8, 0.5),
  }),
  { minLength: 1, maxLength: 5 },
)

const gain = 10

/** One fault, one repair each, no checks but a free look whether it works now, and some faults that nothing mends. */
const independent = (actions: readonly Action[], unknown: number): PlanProblem => {
  const names = [...actions.map((_, i) => `f${String(i)}`), 'unknown']
  const sets = [[], ...names.map((name) => [name])]
  const belief = [0, ...chances(actions, unknown)]
  return planProblemSchema.parse({
    format: 'thrum-plan-1',
    hourMinor: 0,
    faults: names,
    suspects: sets.map((faults, s) => ({ id: faults.join() || 'sound', faults, probability: belief[s] })),
    checks: [
      {
        id: 'try',
        minutes: 0,
        outcomes: [{ id: 'works', gives: ['works'] }, { id: 'does-not' }],
        likelihood: sets.map((faults) => (faults.length === 0 ? [1, 0] : [0, 1])),
      },
    ],
    repairs: actions.map(({ costMinor, success }, i) => ({
      id: `r${String(i)}`,
      minutes: 0,
      costMinor,
      success,
      removes: [names[i]],
      takes: ['works'],
    })),
    exits: [
      { id: 'works', needs: ['works'], payoffMinor: sets.map(() => gain) },
      { id: 'give-up', payoffMinor: sets.map(() => 0) },
    ],
  })
}

const chances = (actions: readonly Action[], unknown: number): number[] => {
  const weights = [...actions.map((action) => action.weight), unknown]
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  return weights.map((weight) => weight / total)
}

const ordersOf = <T>(items: readonly T[]): readonly (readonly T[])[] =>
  items.length === 0
    ? [[]]
    : items.flatMap((item, i) => ordersOf(items.filter((_, j) => j !== i)).map((rest) => [item, ...rest]))

/** The best place to stop in an order: each repair is paid for if those before it have not worked. */
const bestStop = (order: readonly { readonly fixes: number; readonly costMinor: number }[]): number => {
  let money = 0
  let broken = 1
  let best = 0
  for (const { fixes, costMinor } of order) {
    money += fixes * gain - broken * costMinor
    broken -= fixes
    best = Math.max(best, money)
  }
  return best
}

/** What each action of a random list mends, as a probability of the whole, and costs. */
const itemsOf = (actions: readonly Action[], unknown: number) => {
  const chance = chances(actions, unknown)
  return actions.map((action, i) => ({ fixes: chance[i] * action.success, costMinor: action.costMinor }))
}

const unknownWeight = fc.double({ min: 0, max: 0.5, noNaN: true })

describe('repairs of independent single faults', () => {
  // Kadane and Simon 1977 (from memory): the order of falling probability per cost is best; here every order is tried.
  it('are made in an order no other order beats', () => {
    fc.assert(
      fc.property(randomActions, unknownWeight, (actions, unknown) => {
        const best = Math.max(...ordersOf(itemsOf(actions, unknown)).map(bestStop))
        const problem = independent(actions, unknown)
        expect(Math.abs(baseOf(problem).value - best)).toBeLessThan(1e-12)
        const { lowerMinor, upperMinor } = plan(problem)
        expect(Math.abs(lowerMinor - best)).toBeLessThan(1e-12)
        expect(upperMinor).toBeGreaterThan(best - 1e-12)
      }),
      runs,
    )
  })

  it('are made in the order of falling probability per cost', () => {
    let several = 0
    fc.assert(
      fc.property(randomActions, unknownWeight, (actions, unknown) => {
        const items = itemsOf(actions, unknown)
        const { policy } = baseOf(independent(actions, unknown))
        const made = policy.flatMap(({ move }) => (move.kind === 'repair' ? [move.id] : []))
        if (made.length > 1) several++
        const rates = made.map((id) => items[Number(id.slice(1))]).map(({ fixes, costMinor }) => fixes / costMinor)
        rates.slice(1).forEach((rate, i) => {
          expect(rate).toBeLessThanOrEqual(rates[i] * (1 + 1e-12))
        })
      }),
      runs,
    )
    expect(several).toBeGreaterThan(runs.numRuns / 4)
  })
})
