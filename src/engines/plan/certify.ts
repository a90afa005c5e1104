import { baseWorkOf } from './base-work.ts'
import { kernelOf } from './kernel.ts'
import { rulesOf } from './rules.ts'
import type { PlanMove, PlanProblem } from './schema.ts'
import { movesFrom, nodeAt, valued, type SearchMove, type SearchNode, type SearchSpace } from './search-node.ts'
import { goalsOf, targetsOf } from './targets.ts'

export type CertifyOptions = {
  /** How many nodes may be opened. */
  readonly openings: number
  /** The search ends when the optimum is known to within this, in minor units. */
  readonly withinMinor?: number
}

/** One node of the policy: what to do there and where each outcome leads; an exit leads nowhere. */
export type PolicyNode = {
  readonly move: PlanMove | null
  readonly lowerMinor: number
  readonly upperMinor: number
  /** Places of the nodes that follow, with their probabilities. A node can be come to on several ways. */
  readonly next: readonly { readonly probability: number; readonly node: number }[]
}

export type Certificate = {
  readonly kind: 'certified'
  /** Exact money of the policy in `policy`; where a node there has no move, its base policy goes on (docs/plan-engine.md). */
  readonly lowerMinor: number
  /** No policy's expected money is above it. */
  readonly upperMinor: number
  /** True when the two agree to within what was asked. */
  readonly closed: boolean
  readonly opened: number
  /** The first node is the start. */
  readonly policy: readonly PolicyNode[]
}

const rounding = 1e-9
/** Numbers that all beliefs kept may have together: about 100 MB. The search ends there, however many openings are left. */
const mostNumbers = 12_000_000
/** Nodes that may be kept; some hundred bytes each besides their numbers. */
const mostNodes = 150_000

/**
 * Encloses the optimum by best-first search over an AND/OR graph whose nodes are shared: at each step the node is opened that
 * the best hopes hang on most. Same problem and number of openings, same answer; more openings never loosen it.
 * @param problem one that `checkPlanProblem` has passed
 */
export const certify = (problem: PlanProblem, { openings, withinMinor = 0 }: CertifyOptions): Certificate => {
  const rules = rulesOf(problem)
  const kernel = kernelOf(problem)
  const base = baseWorkOf(rules, kernel, targetsOf(rules, kernel, goalsOf(rules, kernel)))
  const space: SearchSpace = { rules, kernel, base, nodes: new Map(), bounds: new Map() }
  const root = nodeAt(space, rules.start.slice(), kernel.belief)
  const within = Math.max(withinMinor, rounding * Math.max(1, Math.abs(root.upper)))
  let opened = 0
  while (opened < openings && root.upper - root.lower > within && hasRoom(space)) {
    const node = mostHopeful(root)
    if (node === null) break
    open(space, node)
    opened++
  }
  const closed = root.upper - root.lower <= within
  return {
    kind: 'certified',
    lowerMinor: root.lower,
    upperMinor: root.upper,
    closed,
    opened,
    policy: policyFrom(problem, root),
  }
}

const hasRoom = ({ nodes, kernel }: SearchSpace): boolean =>
  nodes.size < mostNodes && nodes.size * kernel.size < mostNumbers

/** Down the moves that promise most, into the outcome with most still open, to a node that has not been opened. */
const mostHopeful = (root: SearchNode): SearchNode | null => {
  let node = root
  while (node.moves !== null) {
    const move = best(node.moves, ({ upper }) => upper)
    const branch = best(move.branches, ({ probability, node: next }) => probability * (next.upper - next.lower))
    if (branch === undefined || branch.node.upper - branch.node.lower <= 0) return null
    node = branch.node
  }
  return node
}

const open = (space: SearchSpace, node: SearchNode): void => {
  node.moves = movesFrom(space, node)
  for (const { branches } of node.moves) for (const branch of branches) branch.node.parents.add(node)
  tighten(node)
}

/** Works values out anew from a node upwards, as long as they change. No node follows itself, so it ends. */
const tighten = (from: SearchNode): void => {
  const waiting = new Set([from])
  for (const node of waiting) {
    waiting.delete(node)
    const moves = (node.moves ?? []).map(valued)
    const lower = Math.max(node.lower, ...moves.map((move) => move.lower))
    const upper = Math.max(lower, Math.min(node.upper, Math.max(...moves.map((move) => move.upper))))
    if (lower === node.lower && upper === node.upper) continue
    node.lower = lower
    node.upper = upper
    for (const parent of node.parents) waiting.add(parent)
  }
}

const best = <Item>(items: readonly Item[], worth: (item: Item) => number): Item =>
  items.reduce((most, item) => (worth(item) > worth(most) ? item : most), items[0])

const lists = { check: 'checks', repair: 'repairs', exit: 'exits' } as const

/** The policy that earns the root's lower value: the nodes come to by it, each once. */
const policyFrom = (problem: PlanProblem, root: SearchNode): readonly PolicyNode[] => {
  const order = [root]
  const place = new Map([[root, 0]])
  for (let at = 0; at < order.length; at++) {
    for (const { node } of chosen(order[at])?.branches ?? []) {
      if (place.has(node)) continue
      place.set(node, order.length)
      order.push(node)
    }
  }
  return order.map((node) => {
    const move = chosen(node)
    return {
      move: move === null ? null : { kind: move.move.kind, id: problem[lists[move.move.kind]][move.move.index].id },
      lowerMinor: node.lower,
      upperMinor: node.upper,
      next: (move?.branches ?? []).map(({ probability, node: next }) => ({ probability, node: place.get(next)! })),
    }
  })
}

/** The move behind a node's lower value, or null where that is the base policy's. */
const chosen = ({ moves, lower }: SearchNode): SearchMove | null => {
  if (moves === null || moves.length === 0) return null
  const most = best(moves, (move) => move.lower)
  return most.lower >= lower - rounding * Math.max(1, Math.abs(lower)) ? most : null
}
