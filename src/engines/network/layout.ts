import { branchOf, type Branch } from './branch.ts'
import { isZero } from './complex.ts'
import type { Network } from './schema.ts'
import { flatten, separate, unite } from './union-find.ts'

/** A network with its nodes numbered, its ideal links merged, and its parts told apart. */
export type Layout = {
  readonly ids: readonly string[]
  readonly nodes: readonly string[]
  readonly from: Int32Array
  readonly to: Int32Array
  readonly branches: readonly Branch[]
  /** Node whose voltage is 0; −1 in a network without elements. */
  readonly reference: number
  /** For each node: the node that stands for all nodes joined to it by ideal links. */
  readonly merged: Int32Array
  /** For each node: the node that stands for all nodes that current can reach from it. */
  readonly part: Int32Array
  /** For each element: true when it is an ideal link that joins two groups of nodes, false when it closes a loop of links. */
  readonly joins: readonly boolean[]
}

export const layOut = (network: Network, omegaRadPerS: number): Layout => {
  const { elements } = network
  const nodes = [...new Set(elements.flatMap((element) => [element.from, element.to]))]
  const index = new Map(nodes.map((name, at) => [name, at]))
  const from = Int32Array.from(elements, (element) => index.get(element.from) ?? -1)
  const to = Int32Array.from(elements, (element) => index.get(element.to) ?? -1)
  const branches = elements.map((element) => branchOf(element, omegaRadPerS))
  const merged = new Int32Array(nodes.length)
  const part = new Int32Array(nodes.length)
  separate(merged)
  separate(part)
  const joins = branches.map((branch, k) => branch.kind === 'link' && unite(merged, from[k], to[k]))
  branches.forEach((branch, k) => {
    if (branch.kind !== 'absent' && branch.kind !== 'fixed-current') unite(part, from[k], to[k])
  })
  flatten(merged)
  flatten(part)
  const ids = elements.map((element) => element.id)
  return {
    ids,
    nodes,
    from,
    to,
    branches,
    reference: referenceOf(network, index),
    merged,
    part,
    joins,
  }
}

const referenceOf = ({ elements }: Network, index: ReadonlyMap<string, number>): number => {
  const source = elements.find((element) => element.kind === 'voltage-source')
  return index.get('ground') ?? index.get(source?.to ?? '') ?? (index.size > 0 ? 0 : -1)
}

/** True when an element drives current or voltage of its own. A source set to zero drives nothing. */
const drives = (branch: Branch): boolean => {
  switch (branch.kind) {
    case 'absent':
    case 'link':
      return false
    case 'impedance':
    case 'fixed-voltage':
      return !isZero(branch.emfV)
    case 'fixed-current':
      return !isZero(branch.currentA)
  }
}

/** Names of the nodes that a source drives and that have no path to the reference, in the order of the network. */
export const drivenFloatingNodes = ({ nodes, from, to, branches, reference, part }: Layout): string[] => {
  const driven = new Set(branches.flatMap((branch, k) => (drives(branch) ? [part[from[k]], part[to[k]]] : [])))
  driven.delete(part[reference])
  return nodes.filter((_, node) => driven.has(part[node]))
}

/** Id of the first fixed voltage whose ends are already joined by links and other fixed voltages, or null. */
export const shortedVoltage = ({ ids, from, to, branches, merged }: Layout): string | null => {
  const joined = Int32Array.from(merged)
  const at = branches.findIndex(
    (branch, k) => branch.kind === 'fixed-voltage' && !unite(joined, merged[from[k]], merged[to[k]]),
  )
  return at < 0 ? null : ids[at]
}
