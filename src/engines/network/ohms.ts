import { makeOhmsWork, type OhmsWork } from './ohms-work.ts'
import { lanes, measureLanes, placeInOrder } from './ohms-lanes.ts'
import type { OhmsTable } from './ohms-table.ts'
import { eliminate } from './star-mesh.ts'
import { flatten, separate, unite } from './union-find.ts'

/** A network of two-ended resistances whose values come later. Node and element order are those of the elements given. */
export type OhmsNetwork = {
  readonly nodes: readonly string[]
  readonly elements: number
  readonly index: ReadonlyMap<string, number>
  readonly from: Int32Array
  readonly to: Int32Array
  /** Scratch, so that solving allocates nothing. It makes one network unfit for use by two solvers at once. */
  readonly work: OhmsWork
}

/** Numbers the nodes of a network once, so that it can be solved for many sets of resistances. */
export const compileOhms = (elements: readonly { readonly from: string; readonly to: string }[]): OhmsNetwork => {
  const nodes = [...new Set(elements.flatMap((element) => [element.from, element.to]))]
  const index = new Map(nodes.map((name, at) => [name, at]))
  return {
    nodes,
    elements: elements.length,
    index,
    from: Int32Array.from(elements, (element) => index.get(element.from) ?? -1),
    to: Int32Array.from(elements, (element) => index.get(element.to) ?? -1),
    work: makeOhmsWork(nodes.length, elements.length, lanes),
  }
}

/** Index of a node by its name; −1 when no element uses that name. */
export const nodeIndex = (network: OhmsNetwork, name: string): number => network.index.get(name) ?? -1

/**
 * Resistances between pairs of nodes, and how much each element contributes to them (see {@link OhmsTable}).
 * One factorisation serves all pairs; parts of the network without a pair are left out.
 * @param elementOhm resistance of each element in Ω: 0 an ideal link, Infinity absent
 * @param pairs node indices a0, b0, a1, b1, …
 * Throws a RangeError for a negative or missing resistance, an unknown node, or a table of another size.
 * Method: nodal analysis; the share is Tellegen's theorem applied to the network and itself.
 */
export const ohmsBetween = (
  network: OhmsNetwork,
  elementOhm: Float64Array,
  pairs: Int32Array,
  out: OhmsTable,
): void => {
  if (out.elements !== network.elements || out.pairs * 2 !== pairs.length) {
    throw new RangeError('the table is for another number of pairs or elements')
  }
  join(network, elementOhm)
  const size = numberNodes(network, pairs)
  const branches = collectBranches(network, elementOhm, size)
  eliminate(network.work, size)
  placeInOrder(network.work, size, branches)
  out.share.fill(0)
  for (let first = 0; first < out.pairs; first += lanes) {
    measureLanes(network.work, pairs, first, size, branches, out)
  }
}

/** Whether the last {@link ohmsBetween} of this network found any path between two nodes, by their indices. */
export const joinedWhenSolved = ({ work }: OhmsNetwork, a: number, b: number): boolean => work.part[a] === work.part[b]

/** At or below the first an element is an ideal link, at or above the second it is absent: 1/R would leave the range of numbers. */
const smallestOhm = 1e-290
const largestOhm = 1e290

/** Joins nodes into groups by ideal links, and into parts by all elements that conduct. */
const join = ({ from, to, work }: OhmsNetwork, elementOhm: Float64Array): void => {
  const { merged, part } = work
  separate(merged)
  separate(part)
  for (let k = 0; k < from.length; k++) {
    const ohm = elementOhm[k]
    if (!(ohm >= 0)) throw new RangeError(`element ${k} has no resistance of zero or more`)
    if (ohm >= largestOhm) continue
    if (ohm <= smallestOhm) unite(merged, from[k], to[k])
    unite(part, from[k], to[k])
  }
  flatten(merged)
  flatten(part)
}

/** Gives the groups of the parts that have a pair to measure the numbers 0, 1, …; all other nodes get −1. Gives their count. */
const numberNodes = ({ nodes, work }: OhmsNetwork, pairs: Int32Array): number => {
  const { merged, part, wanted, slot } = work
  wanted.fill(0)
  for (let at = 0; at < pairs.length; at += 2) {
    const a = pairs[at]
    const b = pairs[at + 1]
    if (!(a >= 0 && b >= 0 && a < nodes.length && b < nodes.length)) throw new RangeError('a pair has an unknown node')
    const partA = part[a]
    if (partA === part[b] && merged[a] !== merged[b]) wanted[partA] = 1
  }
  let size = 0
  for (let node = 0; node < nodes.length; node++) {
    // The lowest node stands for its group, so its number is given before any other node of the group asks for it.
    const group = merged[node]
    slot[node] = wanted[part[node]] === 0 ? -1 : group === node ? size++ : slot[group]
  }
  return size
}

/** Puts the conductances between groups into the matrix and lists the elements they come from. Gives their count. */
const collectBranches = ({ from, to, work }: OhmsNetwork, elementOhm: Float64Array, size: number): number => {
  const { slot, perOhm, degree, neighbour, branchElement, branchFrom, branchTo, branchPerOhm } = work
  perOhm.fill(0, 0, size * size)
  degree.fill(0, 0, size)
  let count = 0
  for (let k = 0; k < from.length; k++) {
    const a = slot[from[k]]
    const b = slot[to[k]]
    if (a === b || elementOhm[k] >= largestOhm) continue
    const conductance = 1 / elementOhm[k]
    if (perOhm[a * size + b] === 0) {
      neighbour[a * size + degree[a]++] = b
      neighbour[b * size + degree[b]++] = a
    }
    perOhm[a * size + b] += conductance
    perOhm[b * size + a] += conductance
    branchElement[count] = k
    branchFrom[count] = a
    branchTo[count] = b
    branchPerOhm[count++] = conductance
  }
  return count
}
