import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { checkPlanProblem, plan, type PlanProblemInput } from '../../../src/engines/plan/index.ts'
import { smallPlan } from '../../support/small-plan.ts'

const asked = (change: Partial<PlanProblemInput> = {}) => plan(valueOf(checkPlanProblem({ ...smallPlan(), ...change })))
const near = (value: number): number => expect.closeTo(value, 9) as number
const move = (answer: ReturnType<typeof asked>, id: string) => answer.ranked.find((ranked) => ranked.move.id === id)

describe('plan', () => {
  it('ranks every move that can be made now and no other', () => {
    const ids = asked().ranked.map((ranked) => ranked.move.id)
    expect(ids.toSorted()).toEqual(['meter', 'mend-f1', 'mend-f2', 'safety', 'spares'].toSorted())
    const held = asked({ marks: ['safe', 'runs'] }).ranked.map((ranked) => ranked.move.id)
    expect(held).toEqual(expect.arrayContaining(['run', 'working']))
  })

  it('leaves out checks and repairs that are done', () => {
    const { checks, repairs } = smallPlan()
    const ids = asked({
      checks: checks.map((check) => ({ ...check, done: check.id === 'meter' })),
      repairs: repairs.map((repair) => ({ ...repair, done: repair.id === 'mend-f1' })),
    }).ranked.map((ranked) => ranked.move.id)
    expect(ids.toSorted()).toEqual(['mend-f2', 'safety', 'spares'].toSorted())
  })

  it('lists every exit with its worth now and the marks it lacks, covers closed', () => {
    // 10 minor a minute; lid and case take 2 and 8 minutes to close.
    const closing = (2 + 8) * 10
    expect(asked({ off: ['lid', 'case'] }).exits).toEqual([
      { id: 'working', expectedMinor: near(0.1 * 3000 + 0.9 * 2500 - closing), missing: ['runs'] },
      { id: 'spares', expectedMinor: near(800 - closing), missing: [] },
    ])
  })

  it('opens covers in the order they come off and closes them the other way round', () => {
    expect(move(asked(), 'meter')).toMatchObject({ open: ['lid', 'case'], close: [], minutes: 3 + 1 + 4 })
    expect(move(asked({ off: ['lid'] }), 'meter')).toMatchObject({ open: ['case'], minutes: 3 + 4 })
    const opened = asked({ off: ['lid', 'case'], marks: ['safe'] })
    expect(move(opened, 'run')).toMatchObject({ open: [], close: ['case', 'lid'], minutes: 5 + 2 + 8 })
    expect(move(opened, 'spares')).toMatchObject({ close: ['case', 'lid'], minutes: 2 + 8 })
  })

  it('gives the probability of each outcome', () => {
    expect(move(asked(), 'meter')?.outcomeProbability).toEqual([expect.closeTo(0.5, 12), expect.closeTo(0.5, 12)])
  })

  it('does not name an exit whose marks are missing, however much it is worth', () => {
    const answer = asked({ repairs: [], checks: smallPlan().checks.map((check) => ({ ...check, costMinor: 10_000 })) })
    expect(answer.best).toEqual({ kind: 'exit', id: 'spares' })
    expect(answer.upperMinor).toBeGreaterThanOrEqual(answer.lowerMinor)
  })

  it('tells minutes and spread of a plan that ends at once', () => {
    const answer = asked({
      checks: [],
      repairs: [],
      off: ['case'],
      exits: [{ id: 'gamble', payoffMinor: [1000, 0, 0, 0] }],
    })
    expect(answer.expectedMin).toBe(8)
    // Standard deviation of 1000 with probability 0.1, else 0.
    expect(answer.spreadMinor).toBeCloseTo(1000 * Math.sqrt(0.1 * 0.9), 9)
  })

  it('tells minutes and spread of a repair that works or does not', () => {
    const answer = asked({
      hourMinor: 60,
      suspects: smallPlan().suspects.map((suspect) => ({ ...suspect, probability: Number(suspect.id === 'f1') })),
      repairs: [{ id: 'mend', minutes: 10, costMinor: 0, removes: ['f1'], success: 0.5, takes: ['runs'] }],
      checks: smallPlan().checks.filter((check) => check.id === 'run').map((check) => ({ ...check, needs: [] })), // prettier-ignore
    })
    expect(answer.best).toEqual({ kind: 'repair', id: 'mend' })
    expect(answer.expectedMin).toBeCloseTo(10 + 5, 9)
    // Working earns 3000, not working 800, evenly.
    expect(answer.lowerMinor).toBeCloseTo((3000 + 800) / 2 - 15, 9)
    expect(answer.spreadMinor).toBeCloseTo((3000 - 800) / 2, 9)
  })

  it('counts the chance and the cost of breaking something', () => {
    const exits = smallPlan().exits.filter((exit) => exit.needs === undefined)
    const risky = smallPlan().repairs.map((repair) => ({ ...repair, breakRisk: 0.2, breakCostMinor: 1000 }))
    const safe = move(asked({ checks: [], exits }), 'mend-f1')?.expectedMinor ?? NaN
    const breaking = move(asked({ checks: [], exits, repairs: risky }), 'mend-f1')?.expectedMinor ?? NaN
    expect(breaking).toBeCloseTo(safe - 0.2 * 1000, 9)
  })

  it('looks no second step ahead when it may not, and then still ranks every move', () => {
    const problem = valueOf(checkPlanProblem(smallPlan()))
    const short = plan(problem, { steps: 0 })
    const whole = plan(problem)
    expect(short.ranked).toHaveLength(whole.ranked.length)
    expect(short.lowerMinor).toBeLessThanOrEqual(whole.lowerMinor)
    expect(short.upperMinor).toBe(whole.upperMinor)
  })
})

describe('suspects that nothing can tell apart', () => {
  it('may as well be one', () => {
    const one = asked()
    const twin = <T>(rows: readonly T[]): T[] => [...rows, rows[1]]
    const { suspects, checks, exits, repairs } = smallPlan()
    const split = suspects.map((s) => (s.id === 'f1' ? { ...s, probability: 0.15 } : s))
    const two = asked({
      faults: ['f1', 'f2', 'f1-twin'],
      suspects: [...split, { id: 'twin', faults: ['f1-twin'], probability: 0.25 }],
      checks: checks.map((check) => ({ ...check, likelihood: twin(check.likelihood) })),
      exits: exits.map((exit) => ({ ...exit, payoffMinor: twin(exit.payoffMinor) })),
      repairs: repairs.map((repair) => (repair.id === 'mend-f1' ? { ...repair, removes: ['f1', 'f1-twin'] } : repair)),
    })
    expect(two.lowerMinor).toBeCloseTo(one.lowerMinor, 9)
    expect(two.upperMinor).toBeCloseTo(one.upperMinor, 9)
    expect(two.ranked.map((ranked) => ranked.move)).toEqual(one.ranked.map((ranked) => ranked.move))
  })
})
