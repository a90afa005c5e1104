import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { certify, checkPlanProblem, plan, type PlanMove, type PlanProblem } from '../../../src/engines/plan/index.ts'
import { exactWorth } from '../../support/brute-plan.ts'
import { truthFile } from '../../support/truth-case.ts'
import { after, expectCertified, expectEnclosed, near, worthOfBeginning } from './plan-case.ts'
import { studentCar } from './student-car.ts'

// Where each expected value comes from stands in student-car/origin.md.

type Expected = {
  readonly cost: number
  /** How many openings the certificate may take. */
  readonly openings: number
  readonly best?: PlanMove
  /** The mean the source found by simulation, for the same way of working. */
  readonly published?: number
  /** Means the source found for ways of working that allow less. */
  readonly dearer?: readonly number[]
  /** What the job can cost in the end, with its probability. */
  readonly costs?: readonly { readonly cost: number; readonly probability: number }[]
  readonly seenFaulty?: Readonly<Record<string, number>>
  /** Cost of beginning with a check and going on as well as can be. */
  readonly beginning?: Readonly<Record<string, number>>
  readonly then?: { readonly check: string; readonly outcome: string; readonly best: PlanMove }
}

const { tolerance, publishedWithin, runs } = truthFile<{
  readonly tolerance: number
  readonly publishedWithin: number
  readonly runs: Readonly<Record<string, Expected>>
}>('plan/student-car/expected.json')

/** Half of the fifth decimal. */
const chanceTolerance = 5e-6

const problemOf = (name: string): PlanProblem => valueOf(checkPlanProblem(studentCar(name)))

/** The runs for which something is known. */
const having = <Field extends keyof Expected>(field: Field) =>
  Object.entries(runs).flatMap(([name, run]) => {
    const value = run[field]
    return value === undefined ? [] : [{ name, problem: problemOf(name), run, value }]
  })

describe('a car that will not start', () => {
  it.each(having('cost'))('$name: lies between the bounds, and the certificate closes on it', ({ problem, run }) => {
    expectEnclosed(problem, -run.cost, tolerance)
    expectCertified(problem, -run.cost, tolerance, run.openings)
  })

  // Of five components with all signs the recursion takes ten seconds.
  it.each(having('cost').filter(({ name }) => !name.startsWith('five')))(
    '$name: is what plain recursion over every move finds',
    ({ problem, value }) => {
      near(exactWorth(problem), -value, tolerance, 'recursion')
    },
  )

  it.each(having('published'))('$name: costs what the source found by simulation', ({ problem, run, value }) => {
    const { lowerMinor } = certify(problem, { openings: run.openings })
    near(-lowerMinor / value, 1, publishedWithin, 'cost by the simulated mean')
  })

  it.each(having('dearer'))('$name: costs less than ways of working that allow less', ({ problem, value }) => {
    for (const mean of value) expect(-plan(problem).lowerMinor).toBeLessThan(mean * (1 - publishedWithin))
  })

  it.each(having('best'))('$name: begins as the optimum does', ({ problem, value }) => {
    expect(plan(problem).best).toEqual(value)
  })

  it.each(having('beginning'))(
    '$name: is worth what is known, whichever check comes first',
    ({ problem, run, value }) => {
      for (const [id, cost] of Object.entries(value)) {
        near(worthOfBeginning(problem, { kind: 'check', id }, run.openings), -cost, tolerance, id)
      }
    },
  )

  it.each(having('then'))('$name: knows what to do about a dipstick that shows no oil', ({ problem, value }) => {
    expect(plan(after(problem, value.check, value.outcome)).best).toEqual(value.best)
  })

  it.each(having('seenFaulty'))('$name: says how likely a component is seen faulty', ({ problem, value }) => {
    const { ranked } = plan(problem)
    for (const [id, chance] of Object.entries(value)) {
      const found = ranked.find(({ move }) => move.id === id)
      near(found?.outcomeProbability[0] ?? NaN, chance, chanceTolerance, id)
    }
  })

  it.each(having('costs'))('$name: spreads as the costs it can come to', ({ problem, run, value }) => {
    const square = value.reduce((sum, { cost, probability }) => sum + probability * (cost - run.cost) ** 2, 0)
    near(plan(problem).spreadMinor, Math.sqrt(square), 0.01, 'spread')
  })
})
