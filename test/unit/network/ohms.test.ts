import { describe, expect, it } from 'vitest'
import { compileOhms, makeOhmsTable, nodeIndex, ohmsBetween } from '../../../src/engines/network/index.ts'

type Resistor = readonly [from: string, to: string, ohm: number]

const measure = (elements: readonly Resistor[], probes: readonly (readonly [string, string])[]) => {
  const network = compileOhms(elements.map(([from, to]) => ({ from, to })))
  const table = makeOhmsTable(probes.length, elements.length)
  const pairs = Int32Array.from(probes.flat(), (name) => nodeIndex(network, name))
  ohmsBetween(
    network,
    Float64Array.from(elements, ([, , ohm]) => ohm),
    pairs,
    table,
  )
  const share = probes.map((_, p) => [...table.share.slice(p * elements.length, (p + 1) * elements.length)])
  return { ohm: [...table.resistanceOhm], share }
}

describe('ohmsBetween', () => {
  it('reads 0 at one point and between merged points, Infinity between parts, and shares nothing there', () => {
    const elements: Resistor[] = [
      ['a', 'b', 3],
      ['b', 'c', 0],
      ['c', 'd', Infinity],
      ['e', 'f', 7],
    ]
    const { ohm, share } = measure(elements, [
      ['a', 'a'],
      ['b', 'c'],
      ['a', 'd'],
      ['a', 'e'],
      ['a', 'c'],
    ])
    expect(ohm).toEqual([0, 0, Infinity, Infinity, 3])
    expect(share).toEqual([[0, 0, 0, 0], [0, 0, 0, 0], [0, 0, 0, 0], [0, 0, 0, 0], [3, 0, 0, 0]]) // prettier-ignore
  })

  it('measures several parts and several elements between the same nodes', () => {
    const { ohm, share } = measure(
      [
        ['a', 'b', 6],
        ['p', 'q', 5],
        ['b', 'a', 3],
        ['q', 'r', 1],
        ['b', 'b', 9],
      ],
      [
        ['a', 'b'],
        ['r', 'p'],
      ],
    )
    expect(ohm[0]).toBeCloseTo(2, 14)
    expect(ohm[1]).toBeCloseTo(6, 14)
    // 1 A splits 1/3 : 2/3 over 6 Ω and 3 Ω.
    expect(share[0][0]).toBeCloseTo(6 / 9, 14)
    expect(share[0][2]).toBeCloseTo((3 * 4) / 9, 14)
    expect(share[0][4]).toBe(0)
    expect(share[1]).toEqual([0, 5, 0, 1, 0])
  })

  it('leaves nothing of one call in the next', () => {
    const network = compileOhms([
      { from: 'a', to: 'b' },
      { from: 'b', to: 'c' },
      { from: 'c', to: 'a' },
    ])
    const pairs = Int32Array.of(0, 1)
    const table = makeOhmsTable(1, 3)
    ohmsBetween(network, Float64Array.of(1, 1, 1), pairs, table)
    expect(table.resistanceOhm[0]).toBeCloseTo(2 / 3, 14)
    ohmsBetween(network, Float64Array.of(Infinity, Infinity, 1), pairs, table)
    expect([...table.resistanceOhm, ...table.share]).toEqual([Infinity, 0, 0, 0])
    ohmsBetween(network, Float64Array.of(Infinity, 2, 5), pairs, table)
    expect([...table.resistanceOhm, ...table.share]).toEqual([7, 0, 2, 5])
    ohmsBetween(network, Float64Array.of(0, 2, 5), pairs, table)
    expect([...table.resistanceOhm, ...table.share]).toEqual([0, 0, 0, 0])
  })

  it('keeps its digits where joints of milliohms meet leaks of gigohms', () => {
    const joints: Resistor[] = Array.from({ length: 20 }, (_, i) => [`n${i}`, `n${i + 1}`, 1e-3])
    const { ohm } = measure([...joints, ['n20', 'metal', 1e10], ['n0', 'metal', 1e10]], [
      ['n0', 'n20'],
      ['n10', 'metal'],
    ]) // prettier-ignore
    const chainOhm = 20e-3
    expect(ohm[0] / ((chainOhm * 2e10) / (chainOhm + 2e10))).toBeCloseTo(1, 13)
    expect(ohm[1] / ((10e-3 + 1e10) / 2)).toBeCloseTo(1, 13)
  })

  it('stays a number at the ends of the range of numbers', () => {
    const tiny = Number.MIN_VALUE
    const huge = Number.MAX_VALUE
    const { ohm } = measure(
      [
        ['a', 'b', tiny],
        ['b', 'c', huge],
        ['c', 'd', 1e280],
        ['d', 'e', 1e-280],
        ['e', 'c', 4],
      ],
      [
        ['a', 'b'],
        ['a', 'c'],
        ['c', 'd'],
      ],
    )
    expect(ohm).toEqual([0, Infinity, 4])
  })

  it('refuses resistances that are none, unknown nodes and tables of another size', () => {
    const network = compileOhms([{ from: 'a', to: 'b' }])
    const pairs = Int32Array.of(0, 1)
    expect(nodeIndex(network, 'elsewhere')).toBe(-1)
    for (const ohm of [-1, NaN]) {
      expect(() => ohmsBetween(network, Float64Array.of(ohm), pairs, makeOhmsTable(1, 1))).toThrow(RangeError)
    }
    expect(() => ohmsBetween(network, new Float64Array(0), pairs, makeOhmsTable(1, 1))).toThrow(RangeError)
    expect(() => ohmsBetween(network, Float64Array.of(1), Int32Array.of(0, -1), makeOhmsTable(1, 1))).toThrow(
      RangeError,
    )
    expect(() => ohmsBetween(network, Float64Array.of(1), pairs, makeOhmsTable(2, 1))).toThrow(RangeError)
    expect(() => ohmsBetween(network, Float64Array.of(1), pairs, makeOhmsTable(1, 3))).toThrow(RangeError)
  })
})
