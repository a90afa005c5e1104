import type { PlanProblem } from '../../src/engines/plan/index.ts'
import { coverMinutes, minorOfMinutes } from './work.ts'

export type Exit = PlanProblem['exits'][number]

export const openExits = ({ exits, marks }: PlanProblem): readonly Exit[] =>
  exits.filter(({ needs }) => needs.every((mark) => marks.includes(mark)))

/** What an exit costs beside its payoff: covers to be put back. */
export const exitMinor = (problem: PlanProblem, exit: Exit, off: readonly string[] = problem.off): number =>
  exit.allCoversOn ? minorOfMinutes(problem, coverMinutes(problem, off, 'closeMin')) : 0

/** Expected money of leaving by an exit now. */
const exitWorth = (problem: PlanProblem, exit: Exit): number =>
  problem.suspects.reduce((sum, { probability }, s) => sum + probability * exit.payoffMinor[s], 0) -
  exitMinor(problem, exit)

/** The exit that brings most of those that can be taken now. */
export const bestExit = (problem: PlanProblem): { readonly exit: Exit; readonly minor: number } =>
  openExits(problem)
    .map((exit) => ({ exit, minor: exitWorth(problem, exit) }))
    .reduce((best, one) => (one.minor > best.minor ? one : best))
