import { seededRandom } from '../src/base/random.ts'
import { compileOhms, makeOhmsTable, nodeIndex, ohmsBetween } from '../src/engines/network/index.ts'
import { spiceResistances, spiceShares } from '../test/support/spice.ts'

/** One comparison: milliseconds for the same work by this program and by the one it is compared with. */
export type Comparison = {
  readonly name: string
  readonly ours: number
  readonly theirs: number
  readonly ratio: number
}

const nodes = 30
const elements = 35
const pairs = 20
const ourRounds = 20
const callsInRound = 1000
const theirRounds = 9

/** A connected network of the size of a machine's wiring, and pairs of nodes to measure between. */
const machineSized = () => {
  const random = seededRandom(7)
  const below = (count: number): number => Math.floor(random.uniform() * count)
  const resistances = Array.from({ length: elements }, (_, k) => {
    const from = k < nodes - 1 ? k + 1 : below(nodes)
    const to = k < nodes - 1 ? below(k + 1) : (from + 1 + below(nodes - 1)) % nodes
    return { from: `n${from}`, to: `n${to}`, resistanceOhm: 10 ** (random.uniform() * 5 - 2) }
  })
  const probes = Array.from({ length: pairs }, () => {
    const from = below(nodes)
    return [`n${from}`, `n${(from + 1 + below(nodes - 1)) % nodes}`] as const
  })
  return { resistances, probes }
}

/**
 * Resistances between 20 pairs of nodes of a network of 30 nodes with their 35 shares each: this program against
 * ngspice in the same process. The median round counts, once both are warm. ngspice gets the work in three ways: the
 * same work, by its sensitivity analysis; without shares, one run for each reading as it is commonly used; and without
 * shares, all pairs side by side in one netlist, which suits it best.
 */
export const run = async (): Promise<Comparison[]> => {
  const { resistances, probes } = machineSized()
  const network = compileOhms(resistances)
  const table = makeOhmsTable(pairs, elements)
  const ohm = Float64Array.from(resistances, (element) => element.resistanceOhm)
  const nodePairs = Int32Array.from(probes.flat(), (name) => nodeIndex(network, name))
  const round = await median(ourRounds, () => {
    for (let call = 0; call < callsInRound; call++) ohmsBetween(network, ohm, nodePairs, table)
  })
  const ours = round / callsInRound
  assertSame([...table.resistanceOhm], await spiceResistances(resistances, probes))
  const withShares = await median(theirRounds, async () => {
    for (const probe of probes) await spiceShares(resistances, probe)
  })
  const oneByOne = await median(theirRounds, async () => {
    for (const probe of probes) await spiceResistances(resistances, [probe])
  })
  const together = await median(theirRounds, () => spiceResistances(resistances, probes))
  return [
    comparison('20 resistances of a 30-node network and their shares: ngspice, sensitivity analysis', ours, withShares),
    comparison('the same: ngspice without the shares, one run for each resistance', ours, oneByOne),
    comparison('the same: ngspice without the shares, one netlist for all', ours, together),
  ]
}

const comparison = (name: string, ours: number, theirs: number): Comparison => ({
  name,
  ours,
  theirs,
  ratio: theirs / ours,
})

/** Milliseconds of the median of several rounds, after one that does not count. */
const median = async (rounds: number, work: () => unknown): Promise<number> => {
  await work()
  const times: number[] = []
  for (let round = 0; round < rounds; round++) {
    const began = performance.now()
    await work()
    times.push(performance.now() - began)
  }
  return times.sort((a, b) => a - b)[Math.floor(rounds / 2)]
}

/** A race between two programs means nothing unless both arrive at the same place. */
const assertSame = (ours: readonly number[], theirs: readonly number[]): void => {
  const same = ours.every((ohm, at) => Math.abs(ohm - theirs[at]) <= 1e-6 * theirs[at])
  if (!same) throw new Error(`resistances differ: ${ours.join(' ')} and ${theirs.join(' ')}`)
}
