import { expect } from 'vitest'
import { certify, plan, type PlanMove, type PlanProblem } from '../../../src/engines/plan/index.ts'
import { consequenceOf, problemAt, startOf } from '../../support/brute-plan.ts'

/** What the tests of published plan problems have in common. */

export const near = (value: number, wanted: number, tolerance: number, what: string): void => {
  expect(Math.abs(value - wanted), `${what}: ${String(value)} for ${String(wanted)}`).toBeLessThan(tolerance)
}

/** The first answer's bounds hold the published optimum between them. */
export const expectEnclosed = (problem: PlanProblem, optimum: number, tolerance: number): void => {
  const { lowerMinor, upperMinor } = plan(problem)
  expect(lowerMinor).toBeLessThanOrEqual(optimum + tolerance)
  expect(upperMinor).toBeGreaterThanOrEqual(optimum - tolerance)
}

/** The certificate closes, and on the published optimum. */
export const expectCertified = (problem: PlanProblem, optimum: number, tolerance: number, openings: number): void => {
  const certificate = certify(problem, { openings })
  expect(certificate.closed, `closed after ${String(certificate.opened)} openings`).toBe(true)
  near(certificate.lowerMinor, optimum, tolerance, 'certified from below')
  near(certificate.upperMinor, optimum, tolerance, 'certified from above')
}

/** The problem as it stands after an outcome of a check. */
export const after = (problem: PlanProblem, check: string, outcome: string): PlanProblem => {
  const place = problem.checks.find(({ id }) => id === check)?.outcomes.findIndex(({ id }) => id === outcome) ?? -1
  const next = consequenceOf(problem, startOf(problem), { kind: 'check', id: check })?.next[place]
  if (next === undefined) throw new Error(`no outcome ${outcome} of ${check}`)
  return problemAt(problem, next.moment)
}

/** The money of beginning with a move and going on as well as can be, each sequel certified. */
export const worthOfBeginning = (problem: PlanProblem, move: PlanMove, openings: number): number => {
  const consequence = consequenceOf(problem, startOf(problem), move)
  if (consequence === null) throw new Error(`${move.id} cannot be made first`)
  return consequence.next.reduce((sum, { probability, moment }) => {
    const sequel = certify(problemAt(problem, moment), { openings })
    expect(sequel.closed, `closed after ${move.id}`).toBe(true)
    return sum + probability * sequel.lowerMinor
  }, -consequence.costMinor)
}
