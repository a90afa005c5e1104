import { addTo, complexMatrix, factorComplex, solveComplex, type ComplexMatrix } from './complex-lu.ts'
import { complex, minus, over, plus, size, zero, type Complex } from './complex.ts'
import { drivenFloatingNodes, layOut, shortedVoltage, type Layout } from './layout.ts'
import { linkCurrents } from './link-currents.ts'
import type { Network } from './schema.ts'

/**
 * - `solved`: the voltage of every node against the reference (V) and the current through every element from its
 *   `from` to its `to` (A). An element that takes up power has voltage and current in step; a source that feeds the
 *   network has them opposed. In AC these are the same amplitudes, peak or effective, in which the sources are given.
 * - `singular`: no solution or many. `where` is an element's id or a node's name.
 * - `floating`: a source drives nodes that no path joins to the reference, so that their voltage is anything.
 */
export type NetworkSolution =
  | {
      readonly kind: 'solved'
      readonly voltage: Readonly<Record<string, Complex>>
      readonly current: Readonly<Record<string, Complex>>
    }
  | { readonly kind: 'singular'; readonly where: string; readonly reason: string }
  | { readonly kind: 'floating'; readonly nodes: readonly string[] }

/**
 * Solves a network at DC: capacitors open, inductors their resistance, phases ignored.
 *
 * The reference is the node `ground`, or else the `to` of the first voltage source, or else the first node. Nodes with
 * no path to it and no source on them are harmless (a switched-off machine has such): they get 0 V and no current.
 * Where ideal links form a loop, how they share the current is open: the last links in the loop get none.
 * Method: modified nodal analysis (Ho, Ruehli and Brennan, IEEE Trans. Circuits and Systems CAS-22, 1975).
 */
export const solveDc = (network: Network): NetworkSolution => solve(network, 0)

/**
 * Solves a network of complex amplitudes at one frequency in Hz; otherwise as {@link solveDc}.
 * Throws a RangeError for a frequency that is not positive.
 */
export const solveAc = (network: Network, frequencyHz: number): NetworkSolution => {
  if (!(frequencyHz > 0 && Number.isFinite(frequencyHz))) throw new RangeError('a frequency is a number above zero')
  return solve(network, 2 * Math.PI * frequencyHz)
}

const solve = (network: Network, omegaRadPerS: number): NetworkSolution => {
  const layout = layOut(network, omegaRadPerS)
  const floating = drivenFloatingNodes(layout)
  if (floating.length > 0) return { kind: 'floating', nodes: floating }
  const shorted = shortedVoltage(layout)
  if (shorted !== null) {
    return singular(shorted, 'its ends are already joined without resistance, so nothing limits its current')
  }
  return solveReferencePart(layout)
}

const singular = (where: string, reason: string): NetworkSolution => ({ kind: 'singular', where, reason })

/** Impedances below this get their current as an unknown of its own: (v − v)/Z would lose its digits. */
const stiffOhm = 1

/** Which column of the system holds which unknown; −1 where there is none. */
type Unknowns = { readonly ofNode: Int32Array; readonly ofElement: Int32Array; readonly names: readonly string[] }

const unknownsOf = ({ ids, nodes, from, branches, reference, merged, part }: Layout): Unknowns => {
  const names: string[] = []
  const ofNode = new Int32Array(nodes.length).fill(-1)
  const inPart = (node: number): boolean => part[node] === part[reference]
  nodes.forEach((name, node) => {
    if (merged[node] === node && inPart(node) && node !== merged[reference]) ofNode[node] = names.push(name) - 1
  })
  nodes.forEach((_, node) => (ofNode[node] = ofNode[merged[node]]))
  const ofElement = Int32Array.from(branches, (branch, k) => {
    const stiff = branch.kind === 'impedance' && size(branch.impedanceOhm) < stiffOhm
    return inPart(from[k]) && (stiff || branch.kind === 'fixed-voltage') ? names.push(ids[k]) - 1 : -1
  })
  return { ofNode, ofElement, names }
}

/** Loops of sources and loose parts are found beforehand, so this is what is left. */
const nothingFixesIt =
  'nothing fixes its value: the network resonates without loss, or its impedances lie too far apart for the arithmetic'

const solveReferencePart = (layout: Layout): NetworkSolution => {
  const unknowns = unknownsOf(layout)
  const { matrix, rhs } = equations(layout, unknowns)
  const order = new Int32Array(matrix.size)
  const lost = factorComplex(matrix, order)
  if (lost >= 0) return singular(unknowns.names[lost], nothingFixesIt)
  solveComplex(matrix, order, rhs)
  const overflow = rhs.findIndex((value) => !Number.isFinite(value.re + value.im))
  if (overflow >= 0) return singular(unknowns.names[overflow], 'its value is beyond the range of numbers')
  const voltage = layout.nodes.map((_, node) => rhs[unknowns.ofNode[node]] ?? zero)
  const current = branchCurrents(layout, unknowns, rhs, voltage)
  linkCurrents(layout, current)
  return {
    kind: 'solved',
    voltage: Object.fromEntries(layout.nodes.map((name, node) => [name, tidy(voltage[node])])),
    current: Object.fromEntries(layout.ids.map((id, k) => [id, tidy(current[k])])),
  }
}

/** Adding zero turns −0 into 0. */
const tidy = (value: Complex): Complex => complex(value.re + 0, value.im + 0)

type System = { readonly matrix: ComplexMatrix; readonly rhs: Complex[] }

/** One row per merged node: the currents that leave it sum to zero. One row per current unknown: its element's law. */
const equations = ({ from, to, branches }: Layout, { ofNode, ofElement, names }: Unknowns): System => {
  const system = { matrix: complexMatrix(names.length), rhs: names.map(() => zero) }
  branches.forEach((branch, k) => {
    const a = ofNode[from[k]]
    const b = ofNode[to[k]]
    const own = ofElement[k]
    if (branch.kind === 'fixed-current') {
      feed(system, a, b, branch.currentA)
    } else if (own >= 0 && (branch.kind === 'impedance' || branch.kind === 'fixed-voltage')) {
      for (const [row, column] of pairs(a, own)) stamp(system, row, column, complex(1))
      for (const [row, column] of pairs(b, own)) stamp(system, row, column, complex(-1))
      if (branch.kind === 'impedance') stamp(system, own, own, minus(zero, branch.impedanceOhm))
      system.rhs[own] = branch.emfV
    } else if (branch.kind === 'impedance') {
      const perOhm = over(complex(1), branch.impedanceOhm)
      for (const node of [a, b]) stamp(system, node, node, perOhm)
      for (const [row, column] of pairs(a, b)) stamp(system, row, column, minus(zero, perOhm))
      feed(system, b, a, over(branch.emfV, branch.impedanceOhm))
    }
  })
  return system
}

const pairs = (a: number, b: number) => [
  [a, b],
  [b, a],
]

/** The reference and nodes outside its part have no row: their index is −1. */
const stamp = ({ matrix }: System, row: number, column: number, value: Complex): void => {
  if (row >= 0 && column >= 0) addTo(matrix, row, column, value)
}

/** A fixed current taken from one node and given to another. */
const feed = ({ rhs }: System, taken: number, given: number, current: Complex): void => {
  if (taken >= 0) rhs[taken] = minus(rhs[taken], current)
  if (given >= 0) rhs[given] = plus(rhs[given], current)
}

const branchCurrents = (
  { from, to, branches }: Layout,
  { ofElement }: Unknowns,
  solution: readonly Complex[],
  voltage: readonly Complex[],
): Complex[] =>
  branches.map((branch, k) => {
    if (branch.kind === 'fixed-current') return branch.currentA
    if (ofElement[k] >= 0) return solution[ofElement[k]]
    if (branch.kind !== 'impedance') return zero
    return over(minus(minus(voltage[from[k]], voltage[to[k]]), branch.emfV), branch.impedanceOhm)
  })
