import { compileAir } from './compile.ts'
import { settle } from './newton.ts'
import type { AirNetwork } from './schema.ts'

/**
 * - `solved`: the pressure of every node against the room (Pa, below zero is suction), the flow through every branch from its `from`
 *   to its `to` (m³/s, counted as air of the room) and the same as mass, and the largest imbalance left at any node.
 * - `floating`: nodes that nothing joins to the room.
 * - `unsettled`: the arithmetic did not come to rest, with the imbalance left.
 */
export type AirSolution =
  | {
      readonly kind: 'solved'
      readonly pressurePa: Readonly<Record<string, number>>
      readonly airflowM3PerS: Readonly<Record<string, number>>
      readonly massKgPerS: Readonly<Record<string, number>>
      readonly residualM3PerS: number
      readonly iterations: number
    }
  | { readonly kind: 'floating'; readonly nodes: readonly string[] }
  | { readonly kind: 'unsettled'; readonly residualM3PerS: number }

/** Solves an air network of any layout. The method is told at {@link settle}; docs/airflow-engine.md has the laws of the branches. */
export const solveAir = (network: AirNetwork): AirSolution => {
  const compiled = compileAir(network)
  if (compiled.floating.length > 0) return { kind: 'floating', nodes: compiled.floating }
  const { pressurePa, flows, residualM3PerS, iterations, settled } = settle(compiled, compiled.scale, compiled.speed)
  if (!settled) return { kind: 'unsettled', residualM3PerS }
  const { air, nodes, ids } = compiled
  return {
    kind: 'solved',
    pressurePa: Object.fromEntries(nodes.map((name, i) => [name, pressurePa[i] - air.pressurePa])),
    airflowM3PerS: Object.fromEntries(ids.map((id, k) => [id, flows[k].q])),
    massKgPerS: Object.fromEntries(ids.map((id, k) => [id, flows[k].q * air.densityKgPerM3])),
    residualM3PerS,
    iterations,
  }
}
