import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  independentPrior,
  removedIndex,
  suspectSets,
  updateBelief,
  type BeliefEvent,
  type BeliefProblem,
} from '../../src/engines/belief/index.ts'
import { beliefProblem } from '../support/belief-cases.ts'

const probability = fc.double({ min: 0, max: 1, noNaN: true })
const likely = fc.double({ min: 0.001, max: 5, noNaN: true })
type Reading = Extract<BeliefEvent, { kind: 'reading' }>

const readingOf = (suspects: number): fc.Arbitrary<Omit<Reading, 'id'>> =>
  fc.record({
    kind: fc.constant('reading' as const),
    likelihood: fc.array(fc.oneof(likely, fc.constant(0)), { minLength: suspects, maxLength: suspects }),
    slip: fc.double({ min: 0.001, max: 0.6, noNaN: true }),
    slipLikelihood: likely,
  })

const changeOf = (suspects: number) =>
  fc.record({
    kind: fc.constant('change' as const),
    becomes: fc.array(fc.nat(suspects - 1), { minLength: suspects, maxLength: suspects }),
    success: probability,
  })

const problemOf = (events: number, withChanges: boolean): fc.Arbitrary<BeliefProblem> =>
  fc.integer({ min: 1, max: 5 }).chain((suspects) => {
    const event = withChanges ? fc.oneof(readingOf(suspects), changeOf(suspects)) : readingOf(suspects)
    return fc
      .tuple(fc.array(likely, { minLength: suspects, maxLength: suspects }), fc.array(event, { maxLength: events }))
      .map(([prior, history]) =>
        beliefProblem(
          prior,
          history.map((e, i) => ({ ...e, id: `e${i}` })),
        ),
      )
  })

const close = (a: ArrayLike<number>, b: ArrayLike<number>): void => {
  expect(a.length).toBe(b.length)
  for (let i = 0; i < a.length; i++) expect(Math.abs(a[i] - b[i])).toBeLessThan(1e-9)
}

/** Every pattern of slips taken in turn, each filtered with plain products: nothing of the engine is used. */
const bruteForce = ({ prior, history }: BeliefProblem) => {
  const readings = history.filter((event) => event.kind === 'reading')
  const slipWeight = readings.map(() => 0)
  const weight = prior.map(() => 0)
  for (let pattern = 0; pattern < 2 ** readings.length; pattern++) {
    const isSlip = (event: BeliefEvent): boolean => ((pattern >> readings.indexOf(event as Reading)) & 1) === 1
    const end = history.reduce<readonly number[]>((now, event) => step(now, event, isSlip(event)), prior)
    end.forEach((w, s) => (weight[s] += w))
    const sum = end.reduce((a, b) => a + b, 0)
    readings.forEach((reading, r) => (slipWeight[r] += isSlip(reading) ? sum : 0))
  }
  const total = weight.reduce((a, b) => a + b, 0)
  const priorTotal = prior.reduce((a, b) => a + b, 0)
  return {
    probability: weight.map((w) => w / total),
    slips: slipWeight.map((w) => w / total),
    logEvidence: Math.log(total / priorTotal),
  }
}

const step = (now: readonly number[], event: BeliefEvent, isSlip: boolean): readonly number[] => {
  if (event.kind === 'reading') {
    return now.map((w, s) => w * (isSlip ? event.slip * event.slipLikelihood : (1 - event.slip) * event.likelihood[s]))
  }
  const next = now.map((w) => w * (1 - event.success))
  now.forEach((w, s) => (next[event.becomes[s]] += w * event.success))
  return next
}

describe('belief', () => {
  it('probabilities, slips and evidence equal the enumeration of all slip patterns', () => {
    fc.assert(
      fc.property(problemOf(6, true), (problem) => {
        const belief = updateBelief(problem)
        const brute = bruteForce(problem)
        close(belief.probability, brute.probability)
        close(
          belief.slips.map((slip) => slip.probability),
          brute.slips,
        )
        expect(belief.logEvidence).toBeCloseTo(brute.logEvidence, 8)
      }),
    )
  })

  it('probabilities sum to 1 and lie between 0 and 1', () => {
    fc.assert(
      fc.property(problemOf(40, true), (problem) => {
        const { probability: p, slips } = updateBelief(problem)
        expect(p.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12)
        for (const value of [...p, ...slips.map((slip) => slip.probability)]) {
          expect(value).toBeGreaterThanOrEqual(0)
          expect(value).toBeLessThanOrEqual(1)
        }
      }),
    )
  })

  it('without repairs the order of readings does not matter', () => {
    fc.assert(
      fc.property(problemOf(12, false), (problem) => {
        const forwards = updateBelief(problem)
        const backwards = updateBelief({ ...problem, history: problem.history.toReversed() })
        close(backwards.probability, forwards.probability)
        close(
          backwards.slips.map((slip) => slip.probability).reverse(),
          forwards.slips.map((slip) => slip.probability),
        )
      }),
    )
  })

  it('a reading struck out leaves no trace: its factor divided out of the belief is the belief without it', () => {
    fc.assert(
      fc.property(problemOf(10, false), fc.nat(9), (problem, at) => {
        const struck = problem.history[at]
        fc.pre(struck?.kind === 'reading')
        const reading = struck
        const before = JSON.stringify(problem)
        const withAll = updateBelief(problem)
        const without = updateBelief({ ...problem, history: problem.history.filter((event) => event !== struck) })
        const { slip, slipLikelihood, likelihood } = reading
        const divided = withAll.probability.map((p, s) => p / ((1 - slip) * likelihood[s] + slip * slipLikelihood))
        const sum = divided.reduce((a, b) => a + b, 0)
        close(
          divided.map((p) => p / sum),
          without.probability,
        )
        expect(JSON.stringify(problem)).toBe(before)
      }),
    )
  })

  it('only the proportions of prior and likelihood matter', () => {
    fc.assert(
      fc.property(problemOf(8, true), fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (problem, factor) => {
        const scaled: BeliefProblem = {
          ...problem,
          prior: problem.prior.map((p) => p * factor),
          history: problem.history.map((event) =>
            event.kind === 'change'
              ? event
              : {
                  ...event,
                  likelihood: event.likelihood.map((l) => l * factor),
                  slipLikelihood: event.slipLikelihood * factor,
                },
          ),
        }
        close(updateBelief(scaled).probability, updateBelief(problem).probability)
      }),
    )
  })

  it('relabelling the suspects relabels the belief', () => {
    fc.assert(
      fc.property(problemOf(8, true), (problem) => {
        const last = problem.prior.length - 1
        const mirrored: BeliefProblem = {
          ...problem,
          prior: problem.prior.toReversed(),
          history: problem.history.map((event) =>
            event.kind === 'reading'
              ? { ...event, likelihood: event.likelihood.toReversed() }
              : { ...event, becomes: event.becomes.toReversed().map((to) => last - to) },
          ),
        }
        close(updateBelief(mirrored).probability.toReversed(), updateBelief(problem).probability)
      }),
    )
  })
})

describe('suspect sets', () => {
  const faultsOf = fc
    .array(fc.array(fc.nat(7), { maxLength: 3 }), { maxLength: 8 })
    .map((rows) => rows.map((excludes, i) => ({ id: `f${i}`, excludes: excludes.map((j) => `f${j}`) })))

  it('hold no excluded pair, no set twice, and what is left after any repair', () => {
    fc.assert(
      fc.property(faultsOf, fc.uniqueArray(fc.nat(7)), (faults, removed) => {
        const sets = suspectSets(faults, 2)
        expect(new Set(sets.map(String)).size).toBe(sets.length)
        for (const [a, b] of sets.filter((set) => set.length === 2)) {
          expect(faults[a].excludes).not.toContain(`f${b}`)
          expect(faults[b].excludes).not.toContain(`f${a}`)
        }
        const removes = new Set(removed)
        const becomes = removedIndex(sets, removes)
        becomes.forEach((to, s) => expect(sets[to]).toEqual(sets[s].filter((fault) => !removes.has(fault))))
        expect(removedIndex(sets, removes).map((to) => becomes[to])).toEqual(becomes)
      }),
    )
  })

  it('get a prior that sums to 1 and in which a more frequent fault is never less likely', () => {
    const rates = fc.array(fc.double({ min: 0, max: 0.9, noNaN: true }), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(rates, (rate) => {
        const sets = suspectSets(
          rate.map((_, i) => ({ id: `f${i}`, excludes: [] })),
          2,
        )
        const prior = independentPrior(sets, Float64Array.from(rate))
        expect(prior.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12)
        rate.forEach((r, i) =>
          rate.forEach((q, j) => r > q && expect(prior[1 + i]).toBeGreaterThanOrEqual(prior[1 + j])),
        )
      }),
    )
  })
})
