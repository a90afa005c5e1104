import { baseValue } from './base-policy.ts'
import type { BaseWork } from './base-work.ts'
import { dot, multiply } from './dot.ts'
import type { Kernel } from './kernel.ts'
import { takeStep, type Step } from './step.ts'
import { applyOutcome, checkIsOpen, closingMin, holds, repairIsOpen, type Rules, type Situation } from './rules.ts'
import { boundsBySuspect } from './upper-bound.ts'

/** A point that can be come to: what is believed, what has been made, and money enclosed from two sides. */
export type SearchNode = {
  readonly situation: Situation
  readonly belief: Float64Array
  /** Money of the best policy known from here, and a bound that no policy exceeds. */
  lower: number
  upper: number
  /** Null until the node is opened. */
  moves: readonly SearchMove[] | null
  readonly parents: Set<SearchNode>
}

/** A way to go on from a node; an exit has no branches. */
export type SearchMove = {
  readonly move: Step | { readonly kind: 'exit'; readonly index: number }
  readonly costMinor: number
  readonly branches: readonly Branch[]
  lower: number
  upper: number
}

type Branch = { readonly probability: number; readonly node: SearchNode }

/** All nodes of one search, each kept once however it is come to. */
export type SearchSpace = {
  readonly rules: Rules
  readonly kernel: Kernel
  readonly base: BaseWork
  readonly nodes: Map<string, SearchNode>
  /** Upper bounds by suspect, by what has been made. */
  readonly bounds: Map<string, Float64Array>
}

/** Beliefs that agree to this share are one node: they come from the same facts in another order. */
const sameBelief = 1e-9

/** The node of a situation and a belief that sums to 1, made when it is first come to. */
export const nodeAt = (space: SearchSpace, situation: Situation, belief: Float64Array): SearchNode => {
  const made = String.fromCharCode(...situation)
  let key = `${made} ${fingerprint(belief)}`
  for (let known = space.nodes.get(key); known !== undefined; known = space.nodes.get(key)) {
    if (isSame(known.belief, belief)) return known
    key += "'"
  }
  const lower = baseValue(space.base, belief, 1, situation)
  const upper = Math.max(lower, boundOf(space, made, situation, belief))
  const node: SearchNode = { situation, belief, lower, upper, moves: null, parents: new Set() }
  space.nodes.set(key, node)
  return node
}

/** A short number for a belief, from its entries to the nearest `sameBelief` (FNV-1a); different beliefs may share one. */
const fingerprint = (belief: Float64Array): number => {
  let hash = 0x811c9dc5
  for (let s = 0; s < belief.length; s++) hash = Math.imul(hash ^ Math.round(belief[s] / sameBelief), 0x01000193)
  return hash >>> 0
}

const isSame = (a: Float64Array, b: Float64Array): boolean => {
  for (let s = 0; s < a.length; s++) if (Math.abs(a[s] - b[s]) > sameBelief) return false
  return true
}

const boundOf = (space: SearchSpace, made: string, situation: Situation, belief: Float64Array): number => {
  const bounds = space.bounds.get(made) ?? boundsBySuspect({ ...space.rules, start: situation }, space.kernel)
  space.bounds.set(made, bounds)
  return dot(belief, bounds)
}

/** Every way to go on from a node. Checks that tell nothing, give no mark and cost something are left out: none gains by them. */
export const movesFrom = (space: SearchSpace, node: SearchNode): readonly SearchMove[] => {
  const { rules } = space
  const exits = [...rules.exits.keys()].filter((exit) => holds(node.situation, rules.exits[exit].needs))
  const checks = [...rules.checks.keys()].filter((check) => checkIsOpen(rules, node.situation, check))
  const repairs = [...rules.repairs.keys()].filter((repair) => repairIsOpen(rules, node.situation, repair))
  return [
    ...exits.map((exit) => exitMove(space, node, exit)),
    ...checks.map((index) => stepMove(space, node, { kind: 'check', index })).filter((move) => !isIdle(move, node)),
    ...repairs.map((index) => stepMove(space, node, { kind: 'repair', index })),
  ]
}

const exitMove = ({ rules, kernel }: SearchSpace, node: SearchNode, index: number): SearchMove => {
  const closing = rules.exits[index].allCoversOn ? rules.minorPerMin * closingMin(rules, node.situation) : 0
  const value = dot(node.belief, kernel.payoff[index]) - closing
  return { move: { kind: 'exit', index }, costMinor: closing, branches: [], lower: value, upper: value }
}

const stepMove = (space: SearchSpace, node: SearchNode, step: Step): SearchMove => {
  const { rules, kernel } = space
  const moved = node.situation.slice()
  const minutes = takeStep(rules, moved, step)
  const { costMinor } = step.kind === 'check' ? rules.checks[step.index] : rules.repairs[step.index]
  const branches =
    step.kind === 'check'
      ? kernel.likelihood[step.index].flatMap((column, outcome) =>
          checkBranch(space, node, moved, step.index, outcome, column),
        )
      : [{ probability: 1, node: nodeAt(space, moved, afterRepair(space, node.belief, step.index)) }]
  const cost = costMinor + minutes * rules.minorPerMin
  return valued({ move: step, costMinor: cost, branches, lower: 0, upper: 0 })
}

const checkBranch = (
  space: SearchSpace,
  node: SearchNode,
  moved: Situation,
  check: number,
  outcome: number,
  column: Float64Array,
): readonly Branch[] => {
  const belief = new Float64Array(node.belief.length)
  const probability = multiply(belief, node.belief, column)
  if (probability <= 0) return []
  for (let s = 0; s < belief.length; s++) belief[s] /= probability
  const situation = moved.slice()
  applyOutcome(space.rules, situation, check, outcome)
  return [{ probability, node: nodeAt(space, situation, belief) }]
}

const afterRepair = ({ kernel, rules }: SearchSpace, before: Float64Array, repair: number): Float64Array => {
  const { from, to } = kernel.transitions[repair]
  const after = before.slice()
  for (let i = 0; i < from.length; i++) {
    const mended = rules.repairs[repair].success * before[from[i]]
    after[to[i]] += mended
    after[from[i]] -= mended
  }
  return after
}

/** The move with its two values worked out anew from its branches. */
export const valued = (move: SearchMove): SearchMove => {
  if (move.move.kind === 'exit') return move
  move.lower = move.upper = -move.costMinor
  for (const { probability, node } of move.branches) {
    move.lower += probability * node.lower
    move.upper += probability * node.upper
  }
  return move
}

const isIdle = ({ costMinor, branches }: SearchMove, { belief, situation }: SearchNode): boolean =>
  costMinor >= 0 &&
  branches.length === 1 &&
  branches[0].node.belief.every((p, s) => Math.abs(p - belief[s]) <= sameBelief) &&
  branches[0].node.situation.filter((byte, place) => byte !== situation[place]).length === 1
