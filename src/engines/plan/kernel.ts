import { suspectsAfterRepair } from './fault-sets.ts'
import { classCount, indistinctClasses } from './merge.ts'
import type { PlanProblem } from './schema.ts'

/** What a repair that works does to the suspects it touches; `from` and `to` have no suspect in common. */
type Transition = { readonly from: Int32Array; readonly to: Int32Array }

/** The suspects as flat tables. The order of suspects in the problem leaves no trace here: they are sorted by id, then merged. */
export type Kernel = {
  readonly size: number
  readonly belief: Float64Array
  /** By exit, by suspect. */
  readonly payoff: readonly Float64Array[]
  /** By check, by outcome, by suspect. */
  readonly likelihood: readonly (readonly Float64Array[])[]
  /** By repair. */
  readonly transitions: readonly Transition[]
}

/** Suspects that nothing can tell apart are one; suspects that cannot come up are left out. */
export const kernelOf = (plan: PlanProblem): Kernel => {
  const order = [...plan.suspects.keys()].sort((a, b) => (plan.suspects[a].id < plan.suspects[b].id ? -1 : 1))
  const sorted = order.map((index) => plan.suspects[index])
  const payoff = plan.exits.map((exit) => Float64Array.from(order, (index) => exit.payoffMinor[index]))
  const likelihood = plan.checks.map((check) => columnsOf(check.likelihood, order, check.outcomes.length))
  const { after } = suspectsAfterRepair({ suspects: sorted, repairs: plan.repairs })
  const belief = normalised(Float64Array.from(sorted, (suspect) => suspect.probability))
  const classes = indistinctClasses(order.length, [...payoff, ...likelihood.flat()], after)
  const whole = merged({ belief, payoff, likelihood }, classes, after)
  return restricted(whole, withTargets(whole, whole.belief.map((mass) => Number(mass > 0)))) // prettier-ignore
}

/** A column per outcome, the rows in the order given and each made to sum to 1. */
const columnsOf = (
  rows: readonly (readonly number[])[],
  order: readonly number[],
  outcomes: number,
): Float64Array[] => {
  const columns = Array.from({ length: outcomes }, () => new Float64Array(order.length))
  for (let s = 0; s < order.length; s++) {
    const row = rows[order[s]]
    let sum = 0
    for (let o = 0; o < outcomes; o++) sum += row[o]
    for (let o = 0; o < outcomes; o++) columns[o][s] = row[o] / sum
  }
  return columns
}

const normalised = (belief: Float64Array): Float64Array => {
  const total = belief.reduce((sum, value) => sum + value, 0)
  return belief.map((value) => value / total)
}

const merged = (
  tables: Pick<Kernel, 'belief' | 'payoff' | 'likelihood'>,
  classes: Int32Array,
  after: readonly Int32Array[],
): Kernel => {
  const size = classCount(classes)
  const firsts = new Int32Array(size)
  for (let i = classes.length - 1; i >= 0; i--) firsts[classes[i]] = i
  const belief = new Float64Array(size)
  classes.forEach((id, index) => (belief[id] += tables.belief[index]))
  const pick = (column: Float64Array): Float64Array => picked(column, firsts)
  return {
    size,
    belief,
    payoff: tables.payoff.map(pick),
    likelihood: tables.likelihood.map((columns) => columns.map(pick)),
    transitions: after.map((row) => transitionOf(firsts, classes, row)),
  }
}

/** The entries of a column at some places; a plain loop, as this is most of the work of building a kernel. */
const picked = (column: Float64Array, places: Int32Array): Float64Array => {
  const result = new Float64Array(places.length)
  for (let i = 0; i < places.length; i++) result[i] = column[places[i]]
  return result
}

const transitionOf = (firsts: Int32Array, classes: Int32Array, after: Int32Array): Transition => {
  const from: number[] = []
  const to: number[] = []
  for (let id = 0; id < firsts.length; id++) {
    const target = classes[after[firsts[id]]]
    if (target === id) continue
    from.push(id)
    to.push(target)
  }
  return { from: Int32Array.from(from), to: Int32Array.from(to) }
}

/** Marks in `keep` also every suspect that repairs can make of those marked. */
const withTargets = (kernel: Kernel, keep: ArrayLike<number>): Uint8Array => {
  const kept = Uint8Array.from(keep)
  for (let grown = true; grown;) {
    grown = false
    for (const { from, to } of kernel.transitions) {
      for (let i = 0; i < from.length; i++) {
        if (kept[from[i]] === 0 || kept[to[i]] !== 0) continue
        kept[to[i]] = 1
        grown = true
      }
    }
  }
  return kept
}

/**
 * The likeliest suspects until they have `share` of the belief or are `count`, and what repairs make of them.
 * Their beliefs keep their values and so sum to less than 1. Used to choose moves, never for a figure in the answer.
 */
export const likeliest = (kernel: Kernel, share: number, count: number): Kernel => {
  const order = [...kernel.belief.keys()].sort((a, b) => kernel.belief[b] - kernel.belief[a] || a - b)
  const keep = new Uint8Array(kernel.size)
  let held = 0
  for (const index of order.slice(0, count)) {
    if (held >= share) break
    keep[index] = 1
    held += kernel.belief[index]
  }
  return restricted(kernel, withTargets(kernel, keep))
}

const restricted = (kernel: Kernel, keep: Uint8Array): Kernel => {
  const kept = Int32Array.from(keep.keys()).filter((index) => keep[index] !== 0)
  if (kept.length === kernel.size) return kernel
  const place = new Int32Array(kernel.size).fill(-1)
  kept.forEach((index, at) => (place[index] = at))
  const pick = (column: Float64Array): Float64Array => picked(column, kept)
  return {
    size: kept.length,
    belief: pick(kernel.belief),
    payoff: kernel.payoff.map(pick),
    likelihood: kernel.likelihood.map((columns) => columns.map(pick)),
    transitions: kernel.transitions.map((transition) => placed(transition, place)),
  }
}

/** A transition among the suspects that have a place, by their places. What comes of a suspect kept is kept too. */
const placed = ({ from, to }: Transition, place: Int32Array): Transition => {
  const live: number[] = []
  for (let i = 0; i < from.length; i++) if (place[from[i]] !== -1) live.push(i)
  return { from: Int32Array.from(live, (i) => place[from[i]]), to: Int32Array.from(live, (i) => place[to[i]]) }
}
