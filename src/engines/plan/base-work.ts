import type { Kernel } from './kernel.ts'
import type { ProofRound } from './proof-round.ts'
import type { Rules, Situation } from './rules.ts'
import { stopExits } from './stop-exits.ts'
import type { Target } from './targets.ts'

/** The policy that `baseValue` found best; kept so that it can be followed step by step. */
export type BaseChoice = {
  /** Place in the list of targets; -1 to stop at once. */
  target: number
  proveFirst: boolean
  /** How many repairs of `BaseWork.order` are made before stopping. */
  repairs: number
}

/** Everything `baseValue` needs, with its work arrays. One per kernel; not for two walks at once. */
export type BaseWork = {
  readonly rules: Rules
  readonly kernel: Kernel
  readonly targets: readonly Target[]
  /** What the best policy is worth, left by `baseValue`: a sum over a belief whose mass need not be 1. */
  best: number
  readonly choice: BaseChoice
  readonly order: Int32Array
  /** How often `baseValue` was called. */
  steps: number
  readonly stops: Int32Array
  /** By target, by set of steps wanted and set of steps that can be made once more. */
  readonly rounds: readonly Map<number, ProofRound>[]
  readonly run: Run
  readonly trial: Int32Array
  /** By place in a target's repairs: the gain at the start of a run, at least the gain now, and work space. */
  readonly firstGains: Float64Array
  readonly gains: Float64Array
  readonly indexes: Float64Array
  readonly belief: Float64Array
  readonly situation: Situation
  readonly trialSituation: Situation
}

/** One walk through a repair sequence: what is settled, what is still in play, and what the path so far has cost. */
type Run = {
  value: number
  mass: number
  costMinor: number
  /** The best exit of those that need no mark, as judged when stopping was last weighed. */
  fallback: number
  /** The same at the start of the run. */
  firstFallback: number
}

export const baseWorkOf = (rules: Rules, kernel: Kernel, targets: readonly Target[]): BaseWork => ({
  rules,
  kernel,
  targets,
  best: 0,
  choice: { target: -1, proveFirst: false, repairs: 0 },
  order: new Int32Array(rules.repairs.length),
  steps: 0,
  stops: stopExits(rules, kernel),
  rounds: targets.map(() => new Map()),
  run: {
    value: 0,
    mass: 0,
    costMinor: 0,
    fallback: 0,
    firstFallback: 0,
  },
  trial: new Int32Array(rules.repairs.length),
  firstGains: new Float64Array(rules.repairs.length),
  gains: new Float64Array(rules.repairs.length),
  indexes: new Float64Array(rules.repairs.length),
  belief: new Float64Array(kernel.size),
  situation: new Uint8Array(rules.start.length),
  trialSituation: new Uint8Array(rules.start.length),
})
