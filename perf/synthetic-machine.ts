import type { PlanProblem } from '../src/engines/plan/index.ts'

/** How a fault shows: its part does not conduct; conducts or works poorly; or is a danger that one of the safety gates sees. */
export type FaultKind = 'open' | 'poor' | 'unsafe'

export type SyntheticFault = {
  readonly id: string
  readonly part: number
  readonly kind: FaultKind
  /** Odds that it is there, given what the machine was said to do. */
  readonly odds: number
  /** The gate that sees it, if it is unsafe. */
  readonly gate: number
}

/** Parts stand in chains, in order of their number; each is behind one cover or none (−1). */
export type SyntheticMachine = {
  readonly faults: readonly SyntheticFault[]
  /** Suspects as sets of faults, by their place. The first is "nothing wrong". */
  readonly sets: readonly (readonly number[])[]
  readonly covers: PlanProblem['covers']
  readonly behind: readonly number[]
}

/** Safety gates of every machine. */
export const gateCount = 4
