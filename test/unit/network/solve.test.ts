import { describe, expect, it } from 'vitest'
import { solveAc, solveDc, type Network, type NetworkElement } from '../../../src/engines/network/index.ts'

const network = (...elements: NetworkElement[]): Network => ({ format: 'thrum-network-1', elements })
const resistor = (id: string, from: string, to: string, resistanceOhm: number): NetworkElement => ({
  kind: 'resistor',
  id,
  from,
  to,
  resistanceOhm,
})
const supply = (from: string, to: string, voltageV: number, id = 'supply'): NetworkElement => ({
  kind: 'voltage-source',
  id,
  from,
  to,
  voltageV,
  phaseRad: 0,
})
const feed = (from: string, to: string, currentA: number): NetworkElement => ({
  kind: 'current-source',
  id: 'feed',
  from,
  to,
  currentA,
  phaseRad: 0,
})
const coil = (id: string, from: string, to: string, inductanceH: number, resistanceOhm = 0): NetworkElement => ({
  kind: 'inductor',
  id,
  from,
  to,
  inductanceH,
  resistanceOhm,
})
const capacitor = (id: string, from: string, to: string, capacitanceF: number): NetworkElement => ({
  kind: 'capacitor',
  id,
  from,
  to,
  capacitanceF,
})
const solved = (solution: ReturnType<typeof solveDc>) => {
  if (solution.kind !== 'solved') throw new Error(JSON.stringify(solution))
  return solution
}

describe('the reference node', () => {
  it('is ground, else the return of the first voltage source, else the first node', () => {
    const divider = (back: string) =>
      network(supply('l', back, 12), resistor('a', 'l', 'm', 1), resistor('b', 'm', back, 2))
    expect(solved(solveDc(divider('ground'))).voltage['m'].re).toBeCloseTo(8, 12)
    expect(solved(solveDc(divider('n'))).voltage).toMatchObject({ n: { re: 0, im: 0 }, l: { re: 12, im: 0 } })
    const grounded = network(supply('l', 'n', 12), resistor('a', 'l', 'ground', 1), resistor('b', 'ground', 'n', 2))
    expect(solved(solveDc(grounded)).voltage['n'].re).toBeCloseTo(-8, 12)
    expect(solved(solveDc(network(feed('a', 'b', 2), resistor('r', 'b', 'a', 3)))).voltage).toEqual({
      a: { re: 0, im: 0 },
      b: { re: 6, im: 0 },
    })
  })
})

describe('the sense of currents', () => {
  it('counts from `from` to `to` inside every element', () => {
    const { current } = solved(solveDc(network(supply('l', 'ground', 10), resistor('r', 'l', 'ground', 5))))
    expect(current).toEqual({ supply: { re: -2, im: 0 }, r: { re: 2, im: 0 } })
  })

  it('lets the back-EMF of a motor oppose the current', () => {
    const spinning: NetworkElement = {
      kind: 'motor',
      id: 'motor',
      from: 'l',
      to: 'ground',
      resistanceOhm: 2,
      inductanceH: 0.1,
      backEmfOhm: 3,
      backEmfV: 4,
    }
    // (24 − 4) V over (2 + 3) Ω.
    expect(solved(solveDc(network(supply('l', 'ground', 24), spinning))).current['motor'].re).toBeCloseTo(4, 12)
    const generating = network(spinning, resistor('load', 'l', 'ground', 3))
    expect(solved(solveDc(generating)).voltage['l'].re).toBeCloseTo((4 * 3) / 8, 12)
  })

  it('turns by the phase of a source in AC and ignores it at DC', () => {
    const quarter: NetworkElement = { ...supply('l', 'ground', 10), phaseRad: Math.PI / 2 } as NetworkElement
    const net = network(quarter, resistor('r', 'l', 'ground', 5))
    expect(solved(solveDc(net)).current['r']).toEqual({ re: 2, im: 0 })
    expect(solved(solveAc(net, 50)).current['r'].im).toBeCloseTo(2, 12)
  })
})

describe('what is open and what is a link', () => {
  const at = (element: NetworkElement) =>
    solved(solveDc(network(supply('l', 'ground', 10), resistor('r', 'l', 'm', 5), element))).current['r'].re

  it('takes a capacitor as open and a coil as its resistance at DC', () => {
    expect(at(capacitor('c', 'm', 'ground', 1e-6))).toBe(0)
    expect(at(coil('c', 'm', 'ground', 1))).toBeCloseTo(2, 12)
    expect(at(coil('c', 'm', 'ground', 1, 5))).toBeCloseTo(1, 12)
  })

  it('takes switches, fuses and triacs by their state', () => {
    const ends = { id: 'x', from: 'm', to: 'ground' }
    expect(at({ kind: 'switch', ...ends, closed: false, contactOhm: 0 })).toBe(0)
    expect(at({ kind: 'switch', ...ends, closed: true, contactOhm: 15 })).toBeCloseTo(0.5, 12)
    expect(at({ kind: 'fuse', ...ends, intact: false, resistanceOhm: 0 })).toBe(0)
    expect(at({ kind: 'fuse', ...ends, intact: true, resistanceOhm: 0 })).toBeCloseTo(2, 12)
    expect(at({ kind: 'triac', ...ends, on: false, onOhm: 0, offOhm: null })).toBe(0)
    expect(at({ kind: 'triac', ...ends, on: false, onOhm: 0, offOhm: 95 })).toBeCloseTo(0.1, 12)
    expect(at({ kind: 'triac', ...ends, on: true, onOhm: 0, offOhm: 95 })).toBeCloseTo(2, 12)
  })

  it('gives nodes joined by ideal links one voltage, and the links their currents', () => {
    const { voltage, current } = solved(
      solveDc(
        network(
          supply('l', 'ground', 10),
          resistor('link', 'l', 'm', 0),
          resistor('r', 'm', 'ground', 5),
          resistor('link2', 'n', 'm', 0),
          resistor('s', 'n', 'ground', 2),
        ),
      ),
    )
    expect([voltage['m'], voltage['n']]).toEqual([voltage['l'], voltage['l']])
    expect(current['link'].re).toBeCloseTo(7, 12)
    expect(current['link2'].re).toBeCloseTo(-5, 12)
  })

  it('lets the last link of a loop of links carry nothing', () => {
    const loop = network(
      supply('l', 'ground', 10),
      resistor('one', 'l', 'm', 0),
      resistor('two', 'l', 'm', 0),
      resistor('r', 'm', 'ground', 5),
    )
    const { current } = solved(solveDc(loop))
    expect([current['one'].re, current['two'].re]).toEqual([2, 0])
  })
})

describe('networks without a solution', () => {
  it('names a shorted voltage source, and one beside another', () => {
    const shorted = network(supply('l', 'ground', 10), resistor('wire', 'l', 'ground', 0))
    expect(solveDc(shorted)).toMatchObject({ kind: 'singular', where: 'supply' })
    const fight = network(supply('l', 'ground', 10), supply('l', 'ground', 9, 'second'))
    expect(solveDc(fight)).toMatchObject({ kind: 'singular', where: 'second' })
  })

  it('names the node or element where a lossless network resonates', () => {
    const resonanceHz = 1 / (2 * Math.PI * Math.sqrt(0.1 * 10e-6))
    const series = network(supply('l', 'ground', 10), coil('coil', 'l', 'm', 0.1), capacitor('c', 'm', 'ground', 10e-6))
    expect(solveAc(series, resonanceHz)).toMatchObject({ kind: 'singular', where: 'supply' })
    expect(solved(solveAc(series, resonanceHz * 1.01)).voltage['m'].re).toBeLessThan(-100)
    const tank = network(feed('ground', 'm', 1), coil('coil', 'm', 'ground', 0.1), capacitor('c', 'm', 'ground', 10e-6))
    expect(solveAc(tank, resonanceHz)).toMatchObject({ kind: 'singular', where: 'm' })
  })

  it('lists the nodes that a source drives without a path to the reference', () => {
    const loose = network(resistor('r', 'ground', 'a', 1), supply('p', 'q', 5), resistor('s', 'p', 'q', 2))
    expect(solveDc(loose)).toEqual({ kind: 'floating', nodes: ['p', 'q'] })
    const noWayBack = network(resistor('r', 'ground', 'a', 1), feed('ground', 'island', 1))
    expect(solveDc(noWayBack)).toEqual({ kind: 'floating', nodes: ['island'] })
    const spun: NetworkElement = {
      kind: 'motor',
      id: 'm',
      from: 'p',
      to: 'q',
      resistanceOhm: 1,
      inductanceH: 0,
      backEmfOhm: 0,
      backEmfV: 3,
    }
    expect(solveDc(network(resistor('r', 'ground', 'a', 1), spun))).toMatchObject({ kind: 'floating' })
  })

  it('gives loose nodes without a source 0 V and no current', () => {
    const off = network(
      supply('l', 'ground', 230),
      resistor('motor', 'a', 'b', 20),
      resistor('load', 'l', 'ground', 10),
    )
    const { voltage, current } = solved(solveDc(off))
    expect([voltage['a'].re, voltage['b'].re, current['motor'].re]).toEqual([0, 0, 0])
    expect(current['load'].re).toBe(23)
  })

  it('solves a network without elements, and one without sources', () => {
    expect(solveDc(network())).toEqual({ kind: 'solved', voltage: {}, current: {} })
    expect(solved(solveAc(network(resistor('r', 'a', 'b', 1)), 50)).current['r']).toEqual({ re: 0, im: 0 })
  })

  it('throws for a frequency that is no frequency', () => {
    for (const hz of [0, -50, NaN, Infinity]) expect(() => solveAc(network(), hz)).toThrow(RangeError)
  })
})

describe('hard numbers', () => {
  it('keeps the current through a joint of a microohm in a network of megohms', () => {
    const net = network(
      supply('l', 'ground', 1000),
      resistor('joint', 'l', 'm', 1e-6),
      resistor('leak', 'm', 'ground', 1e7),
    )
    const { current } = solved(solveDc(net))
    expect(Math.abs(current['joint'].re / current['leak'].re - 1)).toBeLessThan(1e-12)
  })

  it('takes node names that JavaScript objects use themselves', () => {
    const net = network(supply('__proto__', 'constructor', 6), resistor('toString', '__proto__', 'constructor', 3))
    const { voltage, current } = solved(solveDc(net))
    expect(JSON.parse(JSON.stringify(voltage))).toEqual(
      JSON.parse('{"__proto__":{"re":6,"im":0},"constructor":{"re":0,"im":0}}'),
    )
    expect(current['toString'].re).toBe(2)
  })
})
