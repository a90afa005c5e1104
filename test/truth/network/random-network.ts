import { seededRandom, type Random } from '../../../src/base/random.ts'
import type { NetworkElement } from '../../../src/engines/network/index.ts'

const between = (random: Random, low: number, high: number): number => low * (high / low) ** random.uniform()
const upTo = (random: Random, count: number): number => Math.floor(random.uniform() * count)

/** Ends for a connected network: every node but the first hangs on an earlier one, then some more at random. */
const randomEnds = (random: Random, nodes: number, extra: number): (readonly [string, string])[] => {
  const tree = Array.from({ length: nodes - 1 }, (_, i) => [`n${i + 1}`, `n${upTo(random, i + 1)}`] as const)
  const more = Array.from({ length: extra }, () => {
    const a = upTo(random, nodes)
    return [`n${a}`, `n${(a + 1 + upTo(random, nodes - 1)) % nodes}`] as const
  })
  return [...tree, ...more]
}

/** Resistances from 5 mΩ to 1 MΩ with some ideal links (0) and some open elements (Infinity). */
export const randomResistances = (seed: number) => {
  const random = seededRandom(seed)
  const nodes = 3 + upTo(random, 25)
  const resistance = (): number => [0, Infinity, between(random, 5e-3, 1e6)][random.index([1, 1, 8])]
  const ends = randomEnds(random, nodes, upTo(random, 14))
  const elements = ends.map(([from, to]) => ({ from, to, resistanceOhm: resistance() }))
  const probes = Array.from({ length: 5 }, () => [`n${upTo(random, nodes)}`, `n${upTo(random, nodes)}`] as const)
  return { elements, probes }
}

type Ends = { readonly id: string; readonly from: string; readonly to: string }

/** Elements of every kind without sources. The tree of the network conducts, so that no node is loose. */
export const randomElements = (seed: number): NetworkElement[] => {
  const random = seededRandom(seed)
  const nodes = 3 + upTo(random, 12)
  return randomEnds(random, nodes, 2 + upTo(random, 10)).map(([from, to], k) => {
    const ends = { id: `e${k}`, from, to }
    return k < nodes - 1 ? conductor(random, ends) : anyElement(random, ends)
  })
}

const conductor = (random: Random, ends: Ends): NetworkElement => {
  const ohm = between(random, 0.01, 1e4)
  const choices: readonly NetworkElement[] = [
    { kind: 'resistor', ...ends, resistanceOhm: ohm },
    { kind: 'inductor', ...ends, inductanceH: between(random, 1e-5, 1), resistanceOhm: between(random, 0.1, 100) },
    { kind: 'motor', ...ends, ...motor(random), backEmfV: 0 },
    { kind: 'switch', ...ends, closed: true, contactOhm: random.uniform() < 0.5 ? 0 : between(random, 1e-3, 1) },
    { kind: 'fuse', ...ends, intact: true, resistanceOhm: between(random, 1e-3, 0.1) },
    { kind: 'triac', ...ends, on: true, onOhm: between(random, 0.01, 1), offOhm: null },
  ]
  return choices[upTo(random, choices.length)]
}

const motor = (random: Random) => ({
  resistanceOhm: between(random, 1, 30),
  inductanceH: between(random, 1e-3, 0.2),
  backEmfOhm: random.uniform() < 0.5 ? 0 : between(random, 1, 50),
})

const anyElement = (random: Random, ends: Ends): NetworkElement => {
  const choices: readonly NetworkElement[] = [
    { kind: 'capacitor', ...ends, capacitanceF: between(random, 1e-9, 1e-5) },
    { kind: 'switch', ...ends, closed: false, contactOhm: 0 },
    { kind: 'fuse', ...ends, intact: false, resistanceOhm: 0.01 },
    { kind: 'triac', ...ends, on: false, onOhm: 1, offOhm: random.uniform() < 0.5 ? null : between(random, 1e4, 1e6) },
    conductor(random, ends),
  ]
  return choices[random.index([2, 1, 1, 1, 3])]
}

/** As {@link randomElements}, with sources, a generating motor, and a voltage source that no ideal link can short. */
export const randomPowered = (seed: number): NetworkElement[] => {
  const random = seededRandom(seed + 1_000_000)
  const phaseRad = random.uniform() * 6
  return [
    ...randomElements(seed),
    { kind: 'voltage-source', id: 'mains', from: 'supply', to: 'n0', voltageV: 230, phaseRad },
    { kind: 'resistor', id: 'lead', from: 'supply', to: 'n1', resistanceOhm: between(random, 0.01, 10) },
    { kind: 'voltage-source', id: 'battery', from: 'n2', to: 'cell', voltageV: between(random, 1, 30), phaseRad: 0 },
    { kind: 'motor', id: 'spun', from: 'cell', to: 'n0', ...motor(random), backEmfV: between(random, 1, 50) },
    { kind: 'current-source', id: 'feed', from: 'n1', to: 'n2', currentA: between(random, 0.01, 1), phaseRad: 1 },
  ]
}
