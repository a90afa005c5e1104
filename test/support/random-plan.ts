import fc from 'fast-check'
import type { PlanProblem } from '../../src/engines/plan/index.ts'

/** Small random plan problems: up to 4 faults, 3 checks, 3 repairs, 2 covers and 2 marks, all of them well formed. */

const markNames = ['m1', 'm2']
const coverNames = ['c1', 'c2']
const minutes = fc.integer({ min: 0, max: 8 })

/** The work of the brute-force solver grows with checks × repairs; combinations beyond this take too long. */
const mostRepeats = 6

export const randomPlan: fc.Arbitrary<PlanProblem> = fc
  .record({
    faultCount: fc.integer({ min: 1, max: 4 }),
    checkCount: fc.integer({ min: 0, max: 3 }),
    repairCount: fc.integer({ min: 0, max: 3 }),
    coverCount: fc.integer({ min: 0, max: 2 }),
  })
  .filter(({ checkCount, repairCount }) => checkCount * (repairCount + 1) <= mostRepeats)
  .chain(({ faultCount, checkCount, repairCount, coverCount }) => {
    const faults = Array.from({ length: faultCount }, (_, i) => `f${String(i)}`)
    const covers = coverNames.slice(0, coverCount)
    const some = (names: readonly string[]) => fc.subarray([...names])
    return fc
      .record({
        pairs: some(pairsOf(faults)),
        weights: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 12, maxLength: 12 }),
        after: fc.boolean(),
        openMin: fc.array(minutes, { minLength: 2, maxLength: 2 }),
        closeMin: fc.array(minutes, { minLength: 2, maxLength: 2 }),
        off: some(covers),
        marks: some(markNames),
        checks: fc.array(randomCheck(covers), { minLength: checkCount, maxLength: checkCount }),
        repairs: fc.array(randomRepair(faults, covers), { minLength: repairCount, maxLength: repairCount }),
        exits: fc.array(randomExit, { minLength: 2, maxLength: 3 }),
      })
      .map((raw) => assembled(faults, covers, raw))
  })

const pairsOf = (faults: readonly string[]): readonly string[] =>
  faults.flatMap((a, i) => faults.slice(i + 1).map((b) => `${a}+${b}`))

/** Rows are drawn for the most suspects there can be and cut to size afterwards. */
const mostSuspects = 11

const randomCheck = (covers: readonly string[]) =>
  fc.integer({ min: 2, max: 3 }).chain((count) =>
    fc.record({
      minutes,
      costMinor: fc.integer({ min: 0, max: 15 }),
      allCoversOn: fc.boolean(),
      coversOff: fc.subarray([...covers]),
      needs: rarely(fc.subarray(markNames)),
      gives: fc.array(fc.subarray(markNames), { minLength: count, maxLength: count }),
      takes: fc.array(rarely(fc.subarray(markNames)), { minLength: count, maxLength: count }),
      rows: fc.array(randomRow(count), { minLength: mostSuspects, maxLength: mostSuspects }),
      again: fc.array(fc.boolean(), { minLength: count, maxLength: count }),
      times: fc.constantFrom(1, 1, 1, 2),
      made: fc.constantFrom(0, 0, 0, 1),
      done: fc.boolean(),
      renewedByRepair: fc.boolean(),
    }),
  )

const rarely = (marks: fc.Arbitrary<string[]>): fc.Arbitrary<string[]> =>
  fc.oneof({ weight: 3, arbitrary: fc.constant<string[]>([]) }, { weight: 1, arbitrary: marks })

const randomRow = (count: number): fc.Arbitrary<number[]> => {
  const sure = fc.nat(count - 1).map((at) => Array.from({ length: count }, (_, i) => Number(i === at)))
  const noisy = fc
    .array(fc.integer({ min: 0, max: 8 }), { minLength: count, maxLength: count })
    .filter((weights) => weights.some((weight) => weight > 0))
    .map(shares)
  return fc.oneof(sure, noisy)
}

const randomRepair = (faults: readonly string[], covers: readonly string[]) =>
  fc.record({
    minutes,
    costMinor: fc.integer({ min: 0, max: 40 }),
    coversOff: fc.subarray([...covers]),
    needs: rarely(fc.subarray(markNames)),
    removes: fc.subarray([...faults], { minLength: 1, maxLength: Math.min(2, faults.length) }),
    success: fc.constantFrom(1, 0.9, 0.5, 0),
    breakRisk: fc.constantFrom(0, 0.1),
    breakCostMinor: fc.constantFrom(0, 50),
    takes: fc.subarray(markNames),
    renews: fc.option(fc.subarray(['c0', 'c1', 'c2']), { nil: undefined }),
    done: fc.constantFrom(false, false, false, true),
  })

/** What the exits that may need a proof are worth more, so that there is something to repair for. */
const provedBonus = 200

const randomExit = fc.record({
  payoffs: fc.array(fc.integer({ min: -100, max: 500 }), { minLength: mostSuspects, maxLength: mostSuspects }),
  needs: fc.subarray(markNames),
  allCoversOn: fc.boolean(),
})

type Made<T> = T extends fc.Arbitrary<infer U> ? U : never
type Raw = {
  readonly pairs: readonly string[]
  readonly weights: readonly number[]
  readonly after: boolean
  readonly openMin: readonly number[]
  readonly closeMin: readonly number[]
  readonly off: string[]
  readonly marks: string[]
  readonly checks: readonly Made<ReturnType<typeof randomCheck>>[]
  readonly repairs: readonly Made<ReturnType<typeof randomRepair>>[]
  readonly exits: readonly Made<typeof randomExit>[]
}

const assembled = (faults: string[], covers: readonly string[], raw: Raw): PlanProblem => {
  const sets = [[], ...faults.map((fault) => [fault]), ...raw.pairs.map((pair) => pair.split('+'))]
  const weights = sets.map((_, s) => raw.weights[s])
  const belief = weights.some((weight) => weight > 0) ? shares(weights) : shares(weights.map(() => 1))
  const known = new Set([...raw.marks, ...raw.checks.flatMap((check) => check.gives.flat())])
  const possible = (needs: readonly string[]): string[] => needs.filter((mark) => known.has(mark))
  return {
    format: 'thrum-plan-1',
    hourMinor: 60,
    faults,
    suspects: sets.map((set, s) => ({ id: `s:${set.join('+')}`, faults: set, probability: belief[s] })),
    covers: covers.map((id, i) => ({
      id,
      openMin: raw.openMin[i],
      closeMin: raw.closeMin[i],
      after: i === 1 && raw.after ? [covers[0]] : [],
    })),
    off: raw.off,
    marks: raw.marks,
    checks: raw.checks.map(({ rows, gives, takes, again, needs, coversOff, ...check }, c) => ({
      ...check,
      id: `check${String(c)}`,
      coversOff: check.allCoversOn ? [] : coversOff,
      needs: possible(needs),
      outcomes: gives.map((marks, o) => ({ id: `o${String(o)}`, gives: marks, takes: takes[o], again: again[o] })),
      likelihood: sets.map((_, s) => rows[s]),
    })),
    repairs: raw.repairs.map((repair, r) => ({ ...repair, id: `repair${String(r)}`, needs: possible(repair.needs) })),
    exits: raw.exits.map(({ payoffs, needs, allCoversOn }, e) => ({
      id: `exit${String(e)}`,
      payoffMinor: sets.map((_, s) => payoffs[s] + (e === 0 ? 0 : provedBonus)),
      needs: e === 0 ? [] : possible(needs),
      allCoversOn,
    })),
  }
}

const shares = (weights: readonly number[]): number[] => {
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  return weights.map((weight) => weight / total)
}
