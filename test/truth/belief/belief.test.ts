import { describe, expect, it } from 'vitest'
import { checkBeliefProblem, independentPrior, updateBelief } from '../../../src/engines/belief/index.ts'
import { valueOf } from '../../../src/base/result.ts'
import { beliefProblem, everySet, marginals, surely } from '../../support/belief-cases.ts'
import { isConsistent, type Polybox } from '../../support/polybox.ts'
import { truthFile } from '../../support/truth-case.ts'

// Where each expected value comes from stands in origin.md beside it.

/** Figures printed with five decimals. */
const printed = 5

describe('polybox', () => {
  type Row = {
    readonly measured: Readonly<Record<string, number>>
    readonly exactly: Readonly<Record<string, number>>
    readonly faulty: Readonly<Record<string, number>>
  }
  type Expected = { readonly consistentCandidates: number; readonly tolerance: number; readonly rows: readonly Row[] }
  const box = truthFile<Polybox>('belief/polybox/input.json')
  const expected = truthFile<Expected>('belief/polybox/expected.json')
  const ids = box.components.map((component) => component.id)
  const sets = everySet(ids.length)
  const prior = independentPrior(sets, new Float64Array(ids.length).fill(box.rate))

  /** One reading per observed value; its likelihood is whether it can be, given all observed before it. */
  const readings = (values: Readonly<Record<string, number>>) => {
    let before: Record<string, number> = {}
    return Object.entries(values).map(([point, value]) => {
      before = { ...before, [point]: value }
      return surely(point, likelihood(before))
    })
  }
  const likelihood = (values: Readonly<Record<string, number>>): number[] =>
    sets.map((set) => Number(isConsistent(box, new Set(set.map((i) => ids[i])), values)))

  it('leaves the known number of candidates', () => {
    const { probability } = updateBelief(beliefProblem(prior, readings(box.symptoms)))
    expect(probability.filter((p) => p > 0)).toHaveLength(expected.consistentCandidates)
  })

  it.each(expected.rows)('posteriors after $measured', ({ measured, exactly, faulty }) => {
    const { probability } = updateBelief(beliefProblem(prior, readings({ ...box.symptoms, ...measured })))
    const marginal = marginals(probability, sets, ids.length)
    for (const [id, p] of Object.entries(faulty)) {
      expect(Math.abs(marginal[ids.indexOf(id)] - p), id).toBeLessThan(expected.tolerance)
    }
    for (const [names, p] of Object.entries(exactly)) {
      const wanted = names.split(' ').map((name) => ids.indexOf(name))
      const at = sets.findIndex((set) => set.length === wanted.length && wanted.every((i) => set.includes(i)))
      expect(Math.abs(probability[at] - p), names).toBeLessThan(expected.tolerance)
    }
  })

  it('the order of the two symptoms does not matter, and a reading taken back leaves no trace', () => {
    const [f, g] = readings(box.symptoms)
    const [g2, f2] = readings({ G: box.symptoms['G'], F: box.symptoms['F'] })
    const one = updateBelief(beliefProblem(prior, [f, g]))
    const other = updateBelief(beliefProblem(prior, [g2, f2]))
    expect([...other.probability]).toEqual([...one.probability])
    const withX = readings({ ...box.symptoms, X: 6 })
    updateBelief(beliefProblem(prior, withX))
    const struck = updateBelief(
      beliefProblem(
        prior,
        withX.filter(({ id }) => id !== 'X'),
      ),
    )
    expect([...struck.probability]).toEqual([...one.probability])
  })
})

describe('car that will not start', () => {
  const car = truthFile<Readonly<Record<string, number>>>('belief/student-car/input.json')
  type Expected = {
    readonly probabilityOfNotStarting: number
    readonly posterior: Readonly<Record<string, number>>
    readonly nothing: number
    readonly publishedOil: number
  }
  const expected = truthFile<Expected>('belief/student-car/expected.json')
  const value = (name: string): number => car[name]
  const none = (...names: readonly string[]): number => names.reduce((product, name) => product * (1 - value(name)), 1)
  const dead = value('batteryOld') * value('deadIfOld') + (1 - value('batteryOld')) * value('deadIfNotOld')
  const flat = 1 - (1 - dead) * none('fanBelt', 'alternator', 'chargingLeak')
  const faults = {
    battery: flat,
    oil: value('noOil'),
    tank: value('tankEmpty'),
    fuelLine: value('fuelLineBlocked'),
    starter: value('starterBroken'),
  }
  const sets = everySet(Object.keys(faults).length)
  const prior = independentPrior(sets, Float64Array.from(Object.values(faults)))
  const likelihood = sets.map((set) => (set.length > 0 ? 1 : value('startLeak')))
  const belief = updateBelief(beliefProblem(prior, [surely('will not start', likelihood)]))
  const marginal = marginals(belief.probability, sets, Object.keys(faults).length)

  it('posteriors of the five components', () => {
    Object.keys(faults).forEach((name, i) => expect(marginal[i], name).toBeCloseTo(expected.posterior[name], printed))
    expect(belief.probability[0]).toBeCloseTo(expected.nothing, printed)
    expect(marginal[1]).toBeCloseTo(expected.publishedOil, 2)
  })

  it('probability of not starting', () => {
    expect(Math.exp(belief.logEvidence)).toBeCloseTo(expected.probabilityOfNotStarting, 6)
  })
})

describe('umbrella world', () => {
  it('filters through a change of state', () => {
    const problem = valueOf(checkBeliefProblem(truthFile('belief/umbrella/input.json')))
    const { rain } = truthFile<{ rain: Readonly<Record<string, number>> }>('belief/umbrella/expected.json')
    for (const [id, p] of Object.entries(rain)) {
      const upTo = problem.history.findIndex((event) => event.id === id) + 1
      const belief = updateBelief({ ...problem, history: problem.history.slice(0, upTo) })
      expect(belief.probability[0]).toBeCloseTo(p, 3)
    }
  })
})

describe('four inverters', () => {
  type Input = { readonly rates: readonly (readonly number[])[]; readonly in: number; readonly out: number }
  const input = truthFile<Input>('belief/inverters/input.json')
  const expected = truthFile<{ marginals: readonly (readonly number[])[] }>('belief/inverters/expected.json')

  /** Probability of the observed output: walk the row with the probability that the signal is 1. */
  const likelihood = (set: readonly number[], count: number): number => {
    let one = input.in
    for (let i = 0; i < count; i++) one = set.includes(i) ? 0.5 : 1 - one
    return input.out === 1 ? one : 1 - one
  }

  it.each(input.rates.map((rates, i) => ({ rates, marginal: expected.marginals[i] })))(
    'marginals for rates $rates',
    ({ rates, marginal }) => {
      const sets = everySet(rates.length)
      const prior = independentPrior(sets, Float64Array.from(rates))
      const output = surely(
        'e',
        sets.map((set) => likelihood(set, rates.length)),
      )
      const { probability } = updateBelief(beliefProblem(prior, [output]))
      marginals(probability, sets, rates.length).forEach((p, i) => expect(p).toBeCloseTo(marginal[i], printed))
    },
  )
})

describe('tiger', () => {
  it('a repeated noisy test', () => {
    const noise = truthFile<{ slip: number; slipLikelihood: number }>('belief/tiger/input.json')
    const { afterAgreeing } = truthFile<{ afterAgreeing: readonly number[] }>('belief/tiger/expected.json')
    afterAgreeing.forEach((p, i) => {
      const history = Array.from({ length: i + 1 }, (_, k) => ({ ...surely(`listen-${k}`, [1, 0]), ...noise }))
      expect(updateBelief(beliefProblem([1, 1], history)).probability[0]).toBeCloseTo(p, 6)
    })
  })
})
