import type { PlanProblem } from '../../src/engines/plan/index.ts'
import { bestExit, exitMinor, openExits } from './exits.ts'
import { untriedRepairs, type Decision, type Position, type Rival } from './game.ts'
import { marksAfterRepair, passChances, proofMinor, proofOf, provedExit, type Proof } from './proof.ts'
import { checkWork, offAfter, openChecks, repairWork, type Check, type Repair } from './work.ts'

/** One way to bring the job to its end, by suspect: what it brings, less what it costs with some covers off. */
type Ending = {
  readonly first: Decision
  readonly bringsMinor: readonly number[]
  readonly costsMinor: (off: readonly string[]) => number
}

/** Ways to the end with no more asking: out by an exit, by a proof, or by one repair and its proof. */
const endingsOf = (at: Position): readonly Ending[] => {
  const { problem } = at
  const exits = openExits(problem).map((exit) => ({
    first: { kind: 'exit', id: exit.id } as const,
    bringsMinor: exit.payoffMinor,
    costsMinor: (off: readonly string[]) => exitMinor(problem, exit, off),
  }))
  const proof = proofOf(problem, provedExit(problem).needs)
  const proving = proof === null || proof.length === 0 ? [] : [provedEnding(problem, proof)]
  return [...exits, ...proving, ...untriedRepairs(at).flatMap((repair) => repairedEnding(problem, repair))]
}

/** By suspect: the sale if the proof holds, else the exit that looks best now. */
const provedMinor = (problem: PlanProblem, proof: Proof): readonly number[] => {
  const sale = provedExit(problem).payoffMinor
  const other = bestExit({ ...problem, marks: [] }).exit.payoffMinor
  return passChances(problem, proof).map((chance, s) => chance * sale[s] + (1 - chance) * other[s])
}

const provedEnding = (problem: PlanProblem, proof: Proof): Ending => ({
  first: { kind: 'check', id: proof[0].check.id },
  bringsMinor: provedMinor(problem, proof),
  costsMinor: (off) => proofMinor(problem, proof, off),
})

const repairedEnding = (problem: PlanProblem, repair: Repair): readonly Ending[] => {
  const after = marksAfterRepair(problem, repair)
  const proof = proofOf(after, provedExit(problem).needs)
  if (proof === null) return []
  const proved = provedMinor(after, proof)
  const left = suspectsLeft(problem, repair)
  return [
    {
      first: { kind: 'repair', id: repair.id },
      bringsMinor: proved.map((minor, s) => repair.success * proved[left[s]] + (1 - repair.success) * minor),
      costsMinor: (off) => {
        const work = repairWork(problem, repair, off)
        return work.minor + proofMinor(after, proof, offAfter(off, work))
      },
    },
  ]
}

/** For each suspect, the one that is left when the repair has worked. */
const suspectsLeft = ({ suspects }: PlanProblem, { removes }: Repair): readonly number[] => {
  const keyOf = (faults: readonly string[]): string => faults.toSorted().join('+')
  const place = new Map(suspects.map(({ faults }, s) => [keyOf(faults), s]))
  return suspects.map(({ faults }) => place.get(keyOf(faults.filter((fault) => !removes.includes(fault))))!)
}

type Best = { readonly ending: Ending; readonly minor: number }

/** The best ending under weights of the suspects; `costs` by ending. */
const bestEnding = (endings: readonly Ending[], costs: readonly number[], weights: Float64Array): Best => {
  let best: Best | null = null
  const mass = weights.reduce((sum, weight) => sum + weight, 0)
  for (let e = 0; e < endings.length; e++) {
    const { bringsMinor } = endings[e]
    let minor = -mass * costs[e]
    for (let s = 0; s < weights.length; s++) minor += weights[s] * bringsMinor[s]
    if (best === null || minor > best.minor) best = { ending: endings[e], minor }
  }
  return best!
}

/** Expected money of making a check and then going to the best end without asking more. */
const worthAfter = (problem: PlanProblem, endings: readonly Ending[], check: Check): number => {
  const work = checkWork(problem, check)
  const off = offAfter(problem.off, work)
  const costs = endings.map((ending) => ending.costsMinor(off))
  const weights = new Float64Array(problem.suspects.length)
  return check.outcomes.reduce((sum, _, o) => {
    for (let s = 0; s < weights.length; s++) weights[s] = problem.suspects[s].probability * check.likelihood[s][o]
    return sum + bestEnding(endings, costs, weights).minor
  }, -work.minor)
}

const decide = (at: Position): Decision => {
  const { problem } = at
  const endings = endingsOf(at)
  const belief = Float64Array.from(problem.suspects, ({ probability }) => probability)
  const costs = endings.map((ending) => ending.costsMinor(problem.off))
  const now = bestEnding(endings, costs, belief)
  const [asked] = openChecks(problem)
    .map((check) => ({ id: check.id, minor: worthAfter(problem, endings, check) }))
    .sort((a, b) => b.minor - a.minor)
  return asked !== undefined && asked.minor > now.minor ? { kind: 'check', id: asked.id } : now.ending.first
}

/** The check with most expected money if nothing more is asked after it, and none when the best end without it brings as much. */
export const byOneStep: Rival = { name: 'one-step value of information', told: false, decide }
