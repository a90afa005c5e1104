import { describe, expect, it } from 'vitest'
import { checkBeliefProblem, runBelief, updateBelief, type BeliefEvent } from '../../../src/engines/belief/index.ts'
import { problemText } from '../../../src/base/problem.ts'
import { beliefProblem, surely } from '../../support/belief-cases.ts'

const problemsOf = (input: unknown): readonly string[] => {
  const checked = checkBeliefProblem(input)
  return checked.kind === 'refused' ? checked.problems.map(problemText) : []
}

describe('checkBeliefProblem', () => {
  const plain = { format: 'thrum-belief-1', prior: [1, 1], history: [] }

  it('fills in what a slip is when it is left out', () => {
    const checked = checkBeliefProblem({ ...plain, history: [{ kind: 'reading', id: 'r', likelihood: [1, 0] }] })
    expect(checked).toMatchObject({ kind: 'ok', value: { history: [{ slip: 0.02, slipLikelihood: 1 }] } })
  })

  it('names the event whose list has the wrong length', () => {
    const history = [surely('plug to plug', [1, 0, 1]), { kind: 'change', id: 'new fuse', becomes: [0], success: 1 }]
    const [first, second] = problemsOf({ ...plain, history })
    expect(first).toMatch(/reading plug to plug.*likelihood has 3 entries.*2 suspects/)
    expect(second).toMatch(/change new fuse.*becomes has 1 entries.*2 suspects/)
  })

  it('refuses a change into a suspect that is not there, an id used twice and a prior of nothing', () => {
    const change = { kind: 'change', id: 'r', becomes: [0, 5], success: 1 }
    const problems = problemsOf({ ...plain, prior: [0, 0], history: [surely('r', [1, 1]), change] })
    expect(problems).toHaveLength(3)
    expect(problems[0]).toMatch(/prior weight 0/)
    expect(problems[1]).toMatch(/change r.*become suspect 5/)
    expect(problems[2]).toMatch(/id r is used by an earlier event/)
  })

  it.each([
    ['nothing', undefined],
    ['another format', { ...plain, format: 'thrum-belief-0' }],
    ['a negative likelihood', { ...plain, history: [surely('r', [1, -1])] }],
    ['an infinite prior', { ...plain, prior: [1, Infinity] }],
  ])('refuses %s', (_, input) => {
    expect(problemsOf(input)).not.toHaveLength(0)
  })
})

describe('updateBelief', () => {
  it('does not underflow under many small densities, where products of plain numbers would vanish', () => {
    const readings = Array.from({ length: 60 }, (_, i) => surely(`r${i}`, [1e-10, 3e-10]))
    const belief = updateBelief(beliefProblem([1, 1], readings))
    expect(belief.probability[0]).toBeCloseTo(1 / (1 + 3 ** 60), 40)
    expect(belief.logEvidence).toBeCloseTo(Math.log(0.5) + 60 * Math.log(1e-10) + Math.log1p(3 ** 60), 6)
  })

  it('lets a suspect come back that sixty readings had all but ruled out', () => {
    const against = Array.from({ length: 60 }, (_, i) => surely(`r${i}`, [1, 1e-8]))
    const belief = updateBelief(beliefProblem([1, 1], [...against, surely('proof', [0, 1])]))
    expect([...belief.probability]).toEqual([0, 1])
    expect(belief.logEvidence).toBeCloseTo(Math.log(0.5) + 60 * Math.log(1e-8), 6)
  })

  it('takes a reading that no suspect allows as a slip and says so', () => {
    const odd = { ...surely('odd', [0, 0]), slip: 0.02 }
    const belief = updateBelief(beliefProblem([3, 1], [surely('plain', [1, 1]), odd]))
    expect([...belief.probability]).toEqual([expect.closeTo(0.75, 14), expect.closeTo(0.25, 14)])
    expect(belief.unexplained).toBe('odd')
    expect(belief.logEvidence).toBeCloseTo(Math.log(0.02), 12)
    expect(belief.slips).toEqual([
      { id: 'plain', probability: 0 },
      { id: 'odd', probability: 1 },
    ])
  })

  it('sets aside a reading that is impossible and cannot be a slip', () => {
    const belief = updateBelief(beliefProblem([3, 1], [surely('odd', [0, 0]), surely('later', [1, 1])]))
    expect([...belief.probability]).toEqual([expect.closeTo(0.75, 14), expect.closeTo(0.25, 14)])
    expect(belief.unexplained).toBe('odd')
    expect(belief.logEvidence).toBe(-Infinity)
    expect(belief.slips[0]).toEqual({ id: 'odd', probability: 1 })
  })

  it('suspects an early reading of being a slip once later ones speak against it', () => {
    const says = (id: string, likelihood: readonly number[]) => ({
      ...surely(id, likelihood),
      slip: 0.05,
      slipLikelihood: 0.5,
    })
    const first = updateBelief(beliefProblem([1, 1], [says('a', [1, 0])]))
    expect(first.unexplained).toBeNull()
    const later = updateBelief(beliefProblem([1, 1], [says('a', [1, 0]), says('b', [0, 1]), says('c', [0, 1])]))
    expect(later.unexplained).toBe('a')
  })

  it('after a repair that may fail, the fault is there with what is left of its probability', () => {
    const change = { kind: 'change', id: 'new belt', becomes: [0, 0], success: 0.9 } satisfies BeliefEvent
    const belief = updateBelief(beliefProblem([0.2, 0.8], [change]))
    expect(belief.probability[0]).toBeCloseTo(0.2 + 0.9 * 0.8, 12)
    expect(belief.probability[1]).toBeCloseTo(0.1 * 0.8, 12)
    expect(belief.logEvidence).toBeCloseTo(0, 12)
  })

  it('a reading before a repair does not speak of the machine after it', () => {
    const change = { kind: 'change', id: 'mend', becomes: [0, 0], success: 1 } satisfies BeliefEvent
    const belief = updateBelief(beliefProblem([1, 1], [surely('bad', [0, 1]), change, surely('good', [1, 0])]))
    expect([...belief.probability]).toEqual([1, 0])
    expect(belief.unexplained).toBeNull()
  })
})

describe('runBelief', () => {
  it('gives plain arrays that survive JSON', () => {
    const answer = runBelief(beliefProblem([1, 3], [surely('impossible', [0, 0])]))
    expect(JSON.parse(JSON.stringify(answer))).toEqual({
      kind: 'ok',
      value: {
        format: 'thrum-belief-answer-1',
        probability: [expect.closeTo(0.25, 14), expect.closeTo(0.75, 14)],
        logEvidence: null,
        slips: [{ id: 'impossible', probability: 1 }],
        unexplained: 'impossible',
      },
    })
  })

  it('passes a refusal on', () => {
    expect(runBelief({ format: 'thrum-belief-1', prior: [] }).kind).toBe('refused')
  })
})
