import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { checkPlanProblem, plan, type PlanMove } from '../../../src/engines/plan/index.ts'
import { exactWorth } from '../../support/brute-plan.ts'
import { truthFile } from '../../support/truth-case.ts'
import { after, expectCertified, expectEnclosed, near } from './plan-case.ts'

// Where each expected value comes from stands in origin.md beside it. A folder whose input is a plan problem adds a case; one that
// holds a source's own figures has a test of its name beside it, which makes the problem from them.

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

const here = readdirSync(new URL('.', import.meta.url), { withFileTypes: true })
const folders = here.filter((entry) => entry.isDirectory()).map((entry) => entry.name)
const cases = folders.filter(
  (name) => truthFile<{ readonly format?: string }>(`plan/${name}/input.json`).format === 'thrum-plan-1',
)

it.each(folders.filter((name) => !cases.includes(name)))('%s has a test of its own', (name) => {
  expect(here.map((entry) => entry.name)).toContain(`${name}.test.ts`)
})

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

  it('lies between the bounds, and the certificate closes on it', () => {
    expectEnclosed(problem, expected.lowerMinor, expected.tolerance)
    expectCertified(problem, expected.lowerMinor, expected.tolerance, 2000)
  })

  it('is what plain recursion over every move finds', () => {
    near(exactWorth(problem), expected.lowerMinor, expected.tolerance, 'recursion')
  })
})
