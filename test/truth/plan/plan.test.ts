import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { certify, checkPlanProblem, plan, type PlanMove, type PlanProblem } from '../../../src/engines/plan/index.ts'
import { consequenceOf, exactWorth, problemAt, startOf } from '../../support/brute-plan.ts'
import { truthFile } from '../../support/truth-case.ts'

// Where each expected value comes from stands in origin.md beside it. A folder adds a case.

type Expected = {
  readonly best: PlanMove
  readonly lowerMinor: number
  readonly upperMinor?: number
  readonly moves: Readonly<Record<string, number>>
  readonly information?: Readonly<Record<string, number>>
  readonly outcomes?: Readonly<Record<string, readonly number[]>>
  /** What is best after an outcome of the best check. */
  readonly then?: readonly { readonly check: string; readonly outcome: string; readonly best: PlanMove }[]
  readonly tolerance: number
}

const cases = readdirSync(new URL('.', import.meta.url), { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name)

const near = (value: number, wanted: number, tolerance: number, what: string): void => {
  expect(Math.abs(value - wanted), `${what}: ${String(value)} for ${String(wanted)}`).toBeLessThan(tolerance)
}

describe.each(cases)('%s', (name) => {
  const problem = valueOf(checkPlanProblem(truthFile<unknown>(`plan/${name}/input.json`)))
  const expected = truthFile<Expected>(`plan/${name}/expected.json`)
  const answer = plan(problem)
  const moveOf = (id: string) => answer.ranked.find(({ move }) => move.id === id)

  it('names the best move and its worth', () => {
    expect(answer.best).toEqual(expected.best)
    near(answer.lowerMinor, expected.lowerMinor, expected.tolerance, 'lower')
    if (expected.upperMinor !== undefined) near(answer.upperMinor, expected.upperMinor, expected.tolerance, 'upper')
  })

  it('gives each move its worth', () => {
    for (const [id, worth] of Object.entries(expected.moves)) {
      near(moveOf(id)?.expectedMinor ?? NaN, worth, expected.tolerance, id)
    }
    for (const [id, worth] of Object.entries(expected.information ?? {})) {
      near(moveOf(id)?.informationMinor ?? NaN, worth, expected.tolerance, `information of ${id}`)
    }
    for (const [id, chances] of Object.entries(expected.outcomes ?? {})) {
      chances.forEach((chance, o) => {
        near(moveOf(id)?.outcomeProbability[o] ?? NaN, chance, expected.tolerance, `outcome of ${id}`)
      })
    }
  })

  it.each(expected.then ?? [])('knows what is best after $outcome', ({ check, outcome, best }) => {
    expect(plan(after(problem, check, outcome)).best).toEqual(best)
  })

  it('is what the certificate closes on', () => {
    const certificate = certify(problem, { openings: 2000 })
    expect(certificate.closed).toBe(true)
    near(certificate.lowerMinor, expected.lowerMinor, expected.tolerance, 'certified from below')
    near(certificate.upperMinor, expected.lowerMinor, expected.tolerance, 'certified from above')
  })

  it('is what plain recursion over every move finds', () => {
    near(exactWorth(problem), expected.lowerMinor, expected.tolerance, 'recursion')
  })
})

const after = (problem: PlanProblem, check: string, outcome: string): PlanProblem => {
  const place = problem.checks.find(({ id }) => id === check)?.outcomes.findIndex(({ id }) => id === outcome) ?? -1
  const next = consequenceOf(problem, startOf(problem), { kind: 'check', id: check })?.next[place]
  if (next === undefined) throw new Error(`no outcome ${outcome} of ${check}`)
  return problemAt(problem, next.moment)
}
