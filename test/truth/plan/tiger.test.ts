import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { certify, checkPlanProblem, plan, type PlanProblem } from '../../../src/engines/plan/index.ts'
import { exactWorth } from '../../support/brute-plan.ts'
import { truthFile } from '../../support/truth-case.ts'
import { after, expectCertified, expectEnclosed, near } from './plan-case.ts'

// Where each expected value comes from stands in tiger/origin.md.

const input =
  truthFile<Record<'listens' | 'listenCost' | 'accuracy' | 'rightDoor' | 'wrongDoor', number>>('plan/tiger/input.json')
const expected = truthFile<{
  readonly worth: number
  readonly afterTwoAgreeing: number
  readonly stoppingAfter: Readonly<Record<string, number>>
  readonly stopsAfter: number
  /** How much so many listens fall short of listening without end. */
  readonly shortfalls: Readonly<Record<string, number>>
  readonly openings: number
}>('plan/tiger/expected.json')

/** Half of the sixth decimal. */
const printed = 5e-7

/** A check is made once, so listening again is another check; each needs the one before, as they are all alike. */
const tiger = (listens: number): PlanProblem => {
  const { listenCost, accuracy, rightDoor, wrongDoor } = input
  const listen = (index: number) => ({
    id: `listen-${String(index)}`,
    minutes: 0,
    costMinor: listenCost,
    needs: index === 1 ? [] : [`heard-${String(index - 1)}`],
    outcomes: ['left', 'right'].map((id) => ({ id, gives: [`heard-${String(index)}`] })),
    likelihood: [
      [accuracy, 1 - accuracy],
      [1 - accuracy, accuracy],
    ],
  })
  return valueOf(
    checkPlanProblem({
      format: 'thrum-plan-1',
      hourMinor: 0,
      faults: ['left', 'right'],
      suspects: ['left', 'right'].map((id) => ({ id, faults: [id], probability: 0.5 })),
      checks: Array.from({ length: listens }, (_, i) => listen(i + 1)),
      exits: [
        { id: 'open-left', payoffMinor: [wrongDoor, rightDoor] },
        { id: 'open-right', payoffMinor: [rightDoor, wrongDoor] },
      ],
    }),
  )
}

/** The problem after hearing the tiger on the left so many times running. */
const heardLeft = (problem: PlanProblem, times: number): PlanProblem =>
  Array.from({ length: times }, (_, i) => `listen-${String(i + 1)}`).reduce(
    (now, listen) => after(now, listen, 'left'),
    problem,
  )

/**
 * What listening until so many more reports speak for one side is worth, with no limit to the listening: the ruin problem of a
 * walk that steps towards the truth with `accuracy`, its mean length by Wald's identity.
 */
const worthOfWaitingFor = (lead: number): number => {
  const odds = (input.accuracy / (1 - input.accuracy)) ** lead
  const right = odds / (1 + odds)
  const listens = (lead * (2 * right - 1)) / (2 * input.accuracy - 1)
  return right * input.rightDoor + (1 - right) * input.wrongDoor - listens * input.listenCost
}

describe('a tiger behind one of two doors, opened once', () => {
  const problem = tiger(input.listens)

  it('lies between the bounds, and the certificate closes on it', () => {
    expectEnclosed(problem, expected.worth, printed)
    expectCertified(problem, expected.worth, printed, expected.openings)
    expectEnclosed(heardLeft(problem, 2), expected.afterTwoAgreeing, printed)
    expectCertified(heardLeft(problem, 2), expected.afterTwoAgreeing, printed, expected.openings)
  })

  it('is what plain recursion over every move finds', () => {
    near(exactWorth(problem), expected.worth, printed, 'recursion')
  })

  it('is the best of waiting for any lead, though the listening has an end', () => {
    const waits = [1, 2, 3, 4, 5].map(worthOfWaitingFor)
    expect(waits.indexOf(Math.max(...waits)) + 1).toBe(expected.stopsAfter)
    near(certify(problem, { openings: expected.openings }).lowerMinor, Math.max(...waits), 1e-8, 'listening')
  })

  it.each(Object.entries(expected.shortfalls))('falls short with %s listens only', (listens, shortfall) => {
    const { closed, lowerMinor } = certify(tiger(Number(listens)), { openings: expected.openings })
    expect(closed).toBe(true)
    near((worthOfWaitingFor(expected.stopsAfter) - lowerMinor) / shortfall, 1, 0.01, 'shortfall')
  })

  it.each(Object.entries(expected.stoppingAfter))('is worth stopping after %s agreeing', (times, worth) => {
    const left = plan(heardLeft(problem, Number(times)))
    near(left.exits.find(({ id }) => id === 'open-right')?.expectedMinor ?? NaN, worth, 5e-5, 'opening')
  })

  it('is listened for until three more reports speak for one side', () => {
    const moves = [0, 1, 2, 3].map((times) => plan(heardLeft(problem, times)).best.kind)
    expect(moves).toEqual(['check', 'check', 'check', 'exit'])
    const certified = [0, 1, 2, 3].map(
      (times) => certify(heardLeft(problem, times), { openings: expected.openings }).policy[0].move?.kind ?? null,
    )
    expect(certified.slice(0, 3)).toEqual(['check', 'check', 'check'])
    expectCertified(heardLeft(problem, 3), expected.stoppingAfter['3'], 5e-5, expected.openings)
  })
})
