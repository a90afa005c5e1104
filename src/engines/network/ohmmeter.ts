import { dcOhm } from './branch.ts'
import { makeOhmsTable } from './ohms-table.ts'
import { compileOhms, nodeIndex, ohmsBetween } from './ohms.ts'
import type { Network, NetworkElement } from './schema.ts'

/** An ohmmeter: a source of `testCurrentA` that gives no more than `complianceV`. */
export type Ohmmeter = { readonly testCurrentA: number; readonly complianceV: number }

/** A hand-held multimeter on its top range: 40 MΩ. Common practice; the range is what matters, not the current. */
export const handheldOhmmeter: Ohmmeter = { testCurrentA: 1e-8, complianceV: 0.4 }

/** The largest resistance in Ω that a meter can drive its test current through. Above it the meter shows open. */
export const maximumOhm = (meter: Ohmmeter): number => meter.complianceV / meter.testCurrentA

/**
 * - `open`: no path, or a resistance above the meter's {@link maximumOhm}.
 * - `unknown-node`: no element of the network uses that node.
 * - `live`: the named element is a source. A resistance is only ever measured on a dead network.
 */
export type OhmmeterReading =
  | { readonly kind: 'ohms'; readonly resistanceOhm: number }
  | { readonly kind: 'open' }
  | { readonly kind: 'unknown-node'; readonly node: string }
  | { readonly kind: 'live'; readonly element: string }

/** What an ideal ohmmeter settles at between two nodes of a dead network, all its capacitors charged. */
export const readOhmmeter = (network: Network, meter: Ohmmeter, from: string, to: string): OhmmeterReading => {
  const source = network.elements.find(isSource)
  if (source !== undefined) return { kind: 'live', element: source.id }
  const compiled = compileOhms(network.elements)
  const unknown = [from, to].find((node) => nodeIndex(compiled, node) < 0)
  if (unknown !== undefined) return { kind: 'unknown-node', node: unknown }
  const table = makeOhmsTable(1, compiled.elements)
  const pair = Int32Array.of(nodeIndex(compiled, from), nodeIndex(compiled, to))
  ohmsBetween(compiled, Float64Array.from(network.elements, dcOhm), pair, table)
  const resistanceOhm = table.resistanceOhm[0]
  return resistanceOhm > maximumOhm(meter) ? { kind: 'open' } : { kind: 'ohms', resistanceOhm }
}

/** A fixed source counts even when set to zero: it would short or hold off the meter. A motor counts when it generates. */
const isSource = (element: NetworkElement): boolean =>
  element.kind === 'voltage-source' ||
  element.kind === 'current-source' ||
  (element.kind === 'motor' && element.backEmfV !== 0)
