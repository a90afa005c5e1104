import { valueOf } from '../src/base/result.ts'
import { seededRandom, type Random } from '../src/base/random.ts'
import { exactWorth } from '../test/support/brute-plan.ts'
import { checkPlanProblem, plan, type PlanProblem, type PlanProblemInput } from '../src/engines/plan/index.ts'

export type PlanSize = {
  readonly suspects: number
  readonly checks: number
  readonly repairs: number
  readonly covers: number
  readonly seed: number
}

const repeats = 9
const barMs = 200

/** About the largest problem one machine on the bench makes. */
export const benchSize: PlanSize = { suspects: 1100, checks: 45, repairs: 60, covers: 10, seed: 1 }

/**
 * An invented problem of a given size: faults behind covers, suspects of one, two or three faults, checks that tell some faults
 * with some error, three safety checks and a run check that prove a repair, and four exits.
 */
export const syntheticPlan = (size: PlanSize): PlanProblem => {
  const random = seededRandom(size.seed)
  const faults = Array.from({ length: Math.min(40, size.suspects) }, (_, i) => `fault${String(i)}`)
  const sets = faultSets(faults, size.suspects)
  const weight = faults.map(() => random.uniform() ** 3 + 0.01)
  const belief = shares(sets.map((set) => (set.length === 0 ? 0.02 : set.reduce((p, f) => p * weight[f] * 0.03, 1))))
  const covers = coverChain(size.covers, random)
  const behind = faults.map(() => Math.floor(random.uniform() * (size.covers + 1)))
  const off = (place: number): string[] => (place < size.covers ? [`cover${String(place)}`] : [])
  const problem: PlanProblemInput = {
    format: 'thrum-plan-1',
    hourMinor: 1200,
    faults,
    suspects: sets.map((set, s) => ({
      id: `s${String(s)}`,
      faults: set.map((f) => faults[f]),
      probability: belief[s],
    })),
    covers,
    checks: [
      ...Array.from({ length: size.checks - 4 }, (_, c) => meterCheck(c, sets, faults.length, behind, off, random)),
      ...proofChecks(sets, faults.length),
    ],
    repairs: Array.from({ length: size.repairs }, (_, r) => ({
      id: `repair${String(r)}`,
      minutes: 3 + 20 * random.uniform(),
      costMinor: random.uniform() < 0.5 ? 0 : 600 * random.uniform(),
      coversOff: off(behind[r % faults.length]),
      removes: [faults[r % faults.length]],
      success: r < faults.length ? 0.92 : 0.75,
      takes: ['runs', 'safe0', 'safe1', 'safe2'],
    })),
    exits: [
      exit('sell-working', sets.map((set) => (set.length === 0 ? 4500 : 1500)), ['runs', 'safe0', 'safe1', 'safe2']), // prettier-ignore
      exit(
        'sell-for-spares',
        sets.map((set) => 1100 - 50 * set.length),
        [],
      ),
      exit(
        'parts',
        sets.map((set) => 1600 - 300 * set.length),
        [],
      ),
      exit(
        'scrap',
        sets.map(() => 100),
        [],
      ),
    ],
  }
  return valueOf(checkPlanProblem(problem))
}

const exit = (id: string, payoffMinor: number[], needs: string[]) => ({ id, payoffMinor, needs })

/** Nothing, then single faults, then pairs, then threes in order, until there are enough: closed under repair of one fault. */
const faultSets = (faults: readonly string[], count: number): number[][] => {
  const indexes = [...faults.keys()]
  const pairs = indexes.flatMap((a) => indexes.slice(a + 1).map((b) => [a, b]))
  const threes = pairs.flatMap(([a, b]) => indexes.slice(b + 1).map((c) => [a, b, c]))
  return [[], ...indexes.map((f) => [f]), ...pairs, ...threes].slice(0, count)
}

const coverChain = (count: number, random: Random) =>
  Array.from({ length: count }, (_, i) => ({
    id: `cover${String(i)}`,
    openMin: 1 + 5 * random.uniform(),
    closeMin: 1 + 5 * random.uniform(),
    after: i > 0 && random.uniform() < 0.6 ? [`cover${String(Math.floor(i * random.uniform()))}`] : [],
  }))

/** Three to five bands; each fault the check can tell shifts the reading to a band of its own. */
const meterCheck = (
  index: number,
  sets: readonly number[][],
  faultCount: number,
  behind: readonly number[],
  off: (place: number) => string[],
  random: Random,
) => {
  const bands = 3 + Math.floor(3 * random.uniform())
  const place = behind[Math.floor(faultCount * random.uniform())]
  const band = Array.from({ length: faultCount }, (_, f) =>
    random.uniform() < (behind[f] === place ? 0.6 : 0.12) ? 1 + Math.floor((bands - 1) * random.uniform()) : 0,
  )
  return {
    id: `check${String(index)}`,
    minutes: 0.5 + 4 * random.uniform(),
    coversOff: off(place),
    outcomes: Array.from({ length: bands }, (_, o) => ({ id: `band${String(o)}` })),
    likelihood: sets.map((set) => reading(bands, Math.max(0, ...set.map((f) => band[f])), 0.03)),
  }
}

const reading = (bands: number, at: number, error: number): number[] =>
  Array.from({ length: bands }, (_, o) => (o === at ? 1 - error : error / (bands - 1)))

/** Three safety checks, each failed by some faults, and a run check that needs them and is passed by nothing but a sound machine. */
const proofChecks = (sets: readonly number[][], faultCount: number) => [
  ...[0, 1, 2].map((k) => ({
    id: `safety${String(k)}`,
    minutes: 2,
    allCoversOn: true,
    outcomes: [{ id: 'pass', gives: [`safe${String(k)}`] }, { id: 'fail' }],
    likelihood: sets.map((set) => (set.some((f) => f % 8 === k && f < faultCount / 2) ? [0.02, 0.98] : [0.99, 0.01])),
  })),
  {
    id: 'run',
    minutes: 4,
    allCoversOn: true,
    needs: ['safe0', 'safe1', 'safe2'],
    outcomes: [{ id: 'good', gives: ['runs'] }, { id: 'poor' }, { id: 'dead' }],
    likelihood: sets.map((set) =>
      set.length === 0 ? [0.98, 0.02, 0] : set.some((f) => f % 2 === 0) ? [0.02, 0.08, 0.9] : [0.03, 0.87, 0.1],
    ),
  },
]

const shares = (weights: readonly number[]): number[] => {
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  return weights.map((weight) => weight / total)
}

const medianMs = (work: () => unknown): number => {
  const times = Array.from({ length: repeats }, () => {
    const start = performance.now()
    work()
    return performance.now() - start
  })
  return times.sort((a, b) => a - b)[Math.floor(repeats / 2)]
}

/**
 * Milliseconds (medians) of one plan: at full size against a look-ahead of one step, which is quicker and earns less; and of a
 * problem small enough for it against plain recursion over every move. Throws when a plan takes longer than its bar or claims
 * more than the optimum.
 */
export const run = () => [againstOneStep(), againstRecursion()]

const againstOneStep = () => {
  const problem = syntheticPlan(benchSize)
  const more = plan(problem).lowerMinor / plan(problem, { steps: 0 }).lowerMinor
  const ours = medianMs(() => plan(problem))
  const theirs = medianMs(() => plan(problem, { steps: 0 }))
  const { suspects, checks, repairs, covers } = benchSize
  const size = `${suspects} suspects, ${checks} checks, ${repairs} repairs, ${covers} covers`
  const name = `plan of ${size}, against one step ahead, which earns ${(100 / more).toFixed(0)} % of it`
  return { name, ours, theirs, ratio: theirs / ours, bar: barMs }
}

const againstRecursion = () => {
  const problem = syntheticPlan({ suspects: 4, checks: 5, repairs: 2, covers: 1, seed: 3 })
  const exact = exactWorth(problem)
  const { lowerMinor } = plan(problem)
  if (!(lowerMinor <= exact + roundingMinor)) throw new Error(`plan claims ${lowerMinor}, the optimum is ${exact}`)
  const ours = medianMs(() => plan(problem))
  const theirs = medianMs(() => exactWorth(problem))
  const name = `plan of 4 suspects, 5 checks, 2 repairs (${((100 * lowerMinor) / exact).toFixed(1)} % of the optimum), against plain recursion`
  return { name, ours, theirs, ratio: theirs / ours, bar: barMs }
}

const roundingMinor = 1e-6
