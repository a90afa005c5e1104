import fc from 'fast-check'
import type { Network, NetworkElement } from '../../src/engines/network/index.ts'

const nodes = 8
const node = fc.integer({ min: 0, max: nodes - 1 })
const decades = (from: number, to: number): fc.Arbitrary<number> =>
  fc.double({ min: from, max: to, noNaN: true }).map((exponent) => 10 ** exponent)

export type OhmsElement = { readonly from: string; readonly to: string; readonly ohm: number }

/** Resistances between up to eight nodes, some of them ideal links, some absent. Not always in one piece. */
export const ohmsElements: fc.Arbitrary<OhmsElement[]> = fc.array(
  fc.record({
    from: node.map((at) => `n${at}`),
    to: node.map((at) => `n${at}`),
    ohm: fc.oneof({ arbitrary: decades(-3, 7), weight: 8 }, { arbitrary: fc.constantFrom(0, Infinity), weight: 1 }),
  }),
  { minLength: 2, maxLength: 16 },
)

type Body = NetworkElement extends infer E ? (E extends NetworkElement ? Omit<E, 'id' | 'from' | 'to'> : never) : never

const passive: fc.Arbitrary<Body> = fc.oneof(
  decades(-2, 5).map((resistanceOhm): Body => ({ kind: 'resistor', resistanceOhm })),
  decades(-9, -5).map((capacitanceF): Body => ({ kind: 'capacitor', capacitanceF })),
  fc.tuple(decades(-4, 0), decades(-1, 2)).map(([inductanceH, resistanceOhm]): Body => ({
    kind: 'inductor',
    inductanceH,
    resistanceOhm,
  })),
  fc.boolean().map((closed): Body => ({ kind: 'switch', closed, contactOhm: 0 })),
  fc.tuple(decades(0, 2), decades(-3, -1)).map(([resistanceOhm, inductanceH]): Body => ({
    kind: 'motor',
    resistanceOhm,
    inductanceH,
    backEmfOhm: 20,
    backEmfV: 3,
  })),
)

/** A chain of resistances over all nodes, so that nothing is loose, with anything added and two sources. */
export const poweredNetwork: fc.Arbitrary<Network> = fc
  .record({
    chain: fc.array(decades(-2, 4), { minLength: nodes, maxLength: nodes }),
    more: fc.array(fc.record({ from: node, to: node, body: passive }), { maxLength: 12 }),
    phaseRad: fc.double({ min: 0, max: 6, noNaN: true }),
    feedAt: node,
  })
  .map(({ chain, more, phaseRad, feedAt }) => ({
    format: 'thrum-network-1',
    elements: [
      { kind: 'voltage-source', id: 'mains', from: 'supply', to: 'ground', voltageV: 230, phaseRad },
      { kind: 'current-source', id: 'feed', from: 'ground', to: `n${feedAt}`, currentA: 0.5, phaseRad: 1 },
      ...['supply', ...chain.map((_, k) => `n${k}`)].slice(0, -1).map((from, k): NetworkElement => {
        return { kind: 'resistor', id: `chain${k}`, from, to: `n${k}`, resistanceOhm: chain[k] }
      }),
      { kind: 'resistor', id: 'back', from: `n${nodes - 1}`, to: 'ground', resistanceOhm: 10 },
      ...more
        .filter(({ from, to }) => from !== to)
        .map(({ from, to, body }, k) => ({ ...body, id: `more${k}`, from: `n${from}`, to: `n${to}` })),
    ],
  }))
