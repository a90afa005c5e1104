import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compileOhms, makeOhmsTable, ohmsBetween } from '../../src/engines/network/index.ts'
import { ohmsElements, type OhmsElement } from './network-arbitraries.ts'

/** Resistance between the first and the last node that the elements name, either way round, with its shares. */
const read = (elements: readonly OhmsElement[]) => {
  const network = compileOhms(elements)
  const last = network.nodes.length - 1
  const table = makeOhmsTable(2, elements.length)
  const ohm = Float64Array.from(elements, (element) => element.ohm)
  ohmsBetween(network, ohm, Int32Array.of(0, last, last, 0), table)
  const share = [...table.share.slice(0, elements.length)]
  return { there: table.resistanceOhm[0], back: table.resistanceOhm[1], share }
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

describe('resistances between nodes', () => {
  it('are the same both ways, never negative, never NaN', () => {
    fc.assert(
      fc.property(ohmsElements, (elements) => {
        const { there, back } = read(elements)
        expect(there).toBeGreaterThanOrEqual(0)
        if (there !== back) expect(Math.abs(back / there - 1)).toBeLessThan(1e-12)
      }),
    )
  })

  it('are the sum of the shares of the elements', () => {
    fc.assert(
      fc.property(ohmsElements, (elements) => {
        const { there, share } = read(elements)
        if (there > 0 && there < Infinity) expect(Math.abs(sum(share) / there - 1)).toBeLessThan(1e-9)
        else expect(share.every((value) => value === 0)).toBe(true)
      }),
    )
  })

  it('are never raised by one more conductor (Rayleigh)', () => {
    fc.assert(
      fc.property(ohmsElements, fc.nat(), fc.nat(), fc.constantFrom(0, 0.01, 5, 1e4), (elements, a, b, ohm) => {
        const { nodes } = compileOhms(elements)
        const extra = { from: nodes[a % nodes.length], to: nodes[b % nodes.length], ohm }
        expect(read([...elements, extra]).there).toBeLessThanOrEqual(read(elements).there * (1 + 1e-12))
      }),
    )
  })

  it('obey the triangle inequality', () => {
    fc.assert(
      fc.property(ohmsElements, fc.nat(), (elements, middle) => {
        const network = compileOhms(elements)
        const last = network.nodes.length - 1
        const between = middle % network.nodes.length
        const table = makeOhmsTable(3, elements.length)
        const ohm = Float64Array.from(elements, (element) => element.ohm)
        ohmsBetween(network, ohm, Int32Array.of(0, last, 0, between, between, last), table)
        const [direct, first, second] = table.resistanceOhm
        expect(direct).toBeLessThanOrEqual((first + second) * (1 + 1e-12))
      }),
    )
  })

  it('move with one element as its share says', () => {
    fc.assert(
      fc.property(ohmsElements, fc.nat(), (elements, which) => {
        const at = which % elements.length
        const { there, share } = read(elements)
        fc.pre(there > 0 && there < Infinity && elements[at].ohm > 0 && elements[at].ohm < Infinity)
        const step = 1e-4
        const moved = (by: number): number =>
          read(elements.map((element, k) => (k === at ? { ...element, ohm: element.ohm * Math.exp(by) } : element)))
            .there
        const slope = (moved(step) - moved(-step)) / (2 * step)
        expect(Math.abs(slope - share[at])).toBeLessThanOrEqual(1e-6 * there)
      }),
    )
  })
})
