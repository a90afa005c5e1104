import type { PlanProblem } from '../../src/engines/plan/index.ts'
import { coverMinutes, coversToOpen, isLeft, minorOfMinutes, type Check, type Repair } from './work.ts'

/** A check with the mark that it is made for. */
type Step = { readonly check: Check; readonly mark: string }
export type Proof = readonly Step[]

/**
 * The checks still to be made before the marks are held, each after those it waits for; of several that give a mark, the one
 * of fewest minutes. Null when some mark cannot be had.
 */
export const proofOf = (problem: PlanProblem, marks: readonly string[]): Proof | null => {
  const held = new Set(problem.marks)
  const steps: Step[] = []
  const earn = (mark: string): boolean => {
    if (held.has(mark)) return true
    const [check] = problem.checks
      .filter((one) => isLeft(one) && one.outcomes.some(({ gives }) => gives.includes(mark)))
      .sort((a, b) => a.minutes - b.minutes)
    if (check === undefined) return false
    // Before what it waits for, so that marks that wait for each other come to an end.
    held.add(mark)
    if (!check.needs.every(earn)) return false
    steps.push({ check, mark })
    return true
  }
  return marks.every(earn) ? steps : null
}

/** Minutes of the whole proof, every cover back on at its end. */
const proofMinutes = (problem: PlanProblem, proof: Proof, off: readonly string[]): number => {
  const wanted = proof.flatMap(({ check }) => check.coversOff)
  return (
    proof.reduce((sum, { check }) => sum + check.minutes, 0) +
    coverMinutes(problem, off, 'closeMin') +
    coverMinutes(problem, coversToOpen(problem, wanted, off), 'openMin', 'closeMin')
  )
}

export const proofMinor = (problem: PlanProblem, proof: Proof, off: readonly string[]): number =>
  proof.reduce((sum, { check }) => sum + check.costMinor, minorOfMinutes(problem, proofMinutes(problem, proof, off)))

/** By suspect, the chance that every check of a proof gives its mark. */
export const passChances = (problem: PlanProblem, proof: Proof): readonly number[] =>
  problem.suspects.map((_, s) =>
    proof.reduce((product, { check, mark }) => {
      const passes = check.outcomes.reduce(
        (sum, { gives }, o) => (gives.includes(mark) ? sum + check.likelihood[s][o] : sum),
        0,
      )
      return product * passes
    }, 1),
  )

/** The problem after a repair, but for what is believed: its marks, and which checks would show something new. */
export const marksAfterRepair = (problem: PlanProblem, { takes, renews }: Repair): PlanProblem => ({
  ...problem,
  marks: problem.marks.filter((mark) => !takes.includes(mark)),
  checks: problem.checks.map((check) =>
    (renews?.includes(check.id) ?? check.renewedByRepair) ? { ...check, done: false, made: 0 } : check,
  ),
})

/** The exit that wants a proof. */
export const provedExit = ({ exits }: PlanProblem) => exits.find(({ needs }) => needs.length > 0)!
