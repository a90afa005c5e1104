import type { PlanProblem } from '../../src/engines/plan/index.ts'
import { bestExit } from './exits.ts'
import type { Decision, Position, Rival } from './game.ts'
import { marksAfterRepair, passChances, proofMinor, proofOf, provedExit } from './proof.ts'
import { coverMinutes, coversToOpen, minorOfMinutes, type Repair } from './work.ts'

type Course = { readonly first: Decision; readonly minor: number }

/** All ways to choose some of the faults. */
const subsets = (faults: readonly string[]): readonly (readonly string[])[] =>
  faults.reduce<readonly (readonly string[])[]>((sets, fault) => [...sets, ...sets.map((set) => [...set, fault])], [[]])

/** The way to mend a fault that costs least until it has worked. It may be made again: the cost counts that. */
const cheapestRepair = (problem: PlanProblem, fault: string): Repair | undefined =>
  problem.repairs
    .filter(({ removes }) => removes.includes(fault))
    .sort((a, b) => untilMendedMinor(problem, a) - untilMendedMinor(problem, b))
    .at(0)

const untilMendedMinor = (problem: PlanProblem, { costMinor, minutes, success }: Repair): number =>
  (costMinor + minorOfMinutes(problem, minutes)) / success

/** Mends these faults, leaves the others in, proves, and sells if the proof holds. Null if that cannot be done. */
const courseOf = (problem: PlanProblem, present: readonly string[], mended: readonly string[]): Course | null => {
  const repairs = mended.map((fault) => cheapestRepair(problem, fault))
  if (!repairs.every((repair) => repair !== undefined)) return null
  const after = repairs.reduce(marksAfterRepair, problem)
  const proof = proofOf(after, provedExit(problem).needs)
  if (proof === null || repairs.length + proof.length === 0) return null
  const left = present.filter((fault) => !repairs.some(({ removes }) => removes.includes(fault)))
  const s = suspectOf(problem, left)
  const chance = passChances(after, proof)[s]
  const wanted = repairs.flatMap(({ coversOff }) => coversOff)
  const open = coversToOpen(problem, wanted, problem.off)
  const costMinor =
    repairs.reduce((sum, repair) => sum + untilMendedMinor(problem, repair), 0) +
    minorOfMinutes(problem, coverMinutes(problem, open, 'openMin')) +
    proofMinor(after, proof, [...problem.off, ...open])
  const other = bestExit({ ...problem, marks: [] }).exit.payoffMinor[s]
  return {
    first: repairs.length > 0 ? { kind: 'repair', id: repairs[0].id } : { kind: 'check', id: proof[0].check.id },
    minor: chance * provedExit(problem).payoffMinor[s] + (1 - chance) * other - costMinor,
  }
}

const suspectOf = ({ suspects }: PlanProblem, faults: readonly string[]): number =>
  suspects.findIndex((one) => one.faults.length === faults.length && faults.every((f) => one.faults.includes(f)))

const decide = ({ problem }: Position): Decision => {
  const present = problem.suspects.find(({ probability }) => probability === 1)!.faults
  const { exit, minor } = bestExit(problem)
  const out: Course = { first: { kind: 'exit', id: exit.id }, minor }
  return subsets(present)
    .flatMap((mended) => courseOf(problem, present, mended) ?? [])
    .reduce((best, one) => (one.minor > best.minor ? one : best), out).first
}

/** Told the hidden faults, and whether a repair has worked. Pays for repairs and for the proof all the same. */
export const clairvoyant: Rival = { name: 'clairvoyant', told: true, decide }
