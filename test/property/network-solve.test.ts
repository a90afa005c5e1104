import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { solveAc, solveDc, type Network, type NetworkSolution } from '../../src/engines/network/index.ts'
import { poweredNetwork } from './network-arbitraries.ts'

type Solved = Extract<NetworkSolution, { kind: 'solved' }>

const solved = (solution: NetworkSolution): Solved => {
  if (solution.kind !== 'solved') throw new Error(JSON.stringify(solution))
  return solution
}

const at50Hz = (network: Network): Solved => solved(solveAc(network, 50))
const size = (value: { re: number; im: number }): number => Math.hypot(value.re, value.im)
const largest = (values: Solved['current']): number => Math.max(...Object.values(values).map(size))

const residuals = (network: Network, { current }: Solved): number[] => {
  const sums = new Map<string, { re: number; im: number }>()
  const add = (node: string, re: number, im: number): void => {
    const before = sums.get(node) ?? { re: 0, im: 0 }
    sums.set(node, { re: before.re + re, im: before.im + im })
  }
  for (const { id, from, to } of network.elements) {
    add(from, current[id].re, current[id].im)
    add(to, -current[id].re, -current[id].im)
  }
  return [...sums.values()].map(size)
}

/** v · conj(i) of every element: watts and volt-amperes reactive taken up. */
const powers = (network: Network, { voltage, current }: Solved) =>
  network.elements.map(({ id, from, to }) => {
    const v = { re: voltage[from].re - voltage[to].re, im: voltage[from].im - voltage[to].im }
    const i = current[id]
    return { id, w: v.re * i.re + v.im * i.im, var: v.im * i.re - v.re * i.im }
  })

describe('solved networks', () => {
  it('let no current vanish at any node', () => {
    fc.assert(
      fc.property(poweredNetwork, (network) => {
        for (const solution of [solved(solveDc(network)), at50Hz(network)]) {
          expect(Math.max(...residuals(network, solution))).toBeLessThanOrEqual(1e-9 * largest(solution.current))
        }
      }),
    )
  })

  it('balance real and reactive power over all elements', () => {
    fc.assert(
      fc.property(poweredNetwork, (network) => {
        const all = powers(network, at50Hz(network))
        const scale = all.reduce((total, one) => total + Math.hypot(one.w, one.var), 0)
        expect(Math.abs(all.reduce((total, one) => total + one.w, 0))).toBeLessThanOrEqual(1e-9 * scale)
        expect(Math.abs(all.reduce((total, one) => total + one.var, 0))).toBeLessThanOrEqual(1e-9 * scale)
      }),
    )
  })

  it('take up power in resistances and none in capacitors', () => {
    fc.assert(
      fc.property(poweredNetwork, (network) => {
        const all = new Map(powers(network, at50Hz(network)).map((one) => [one.id, one]))
        const scale = Math.max(...[...all.values()].map((one) => Math.hypot(one.w, one.var)))
        for (const { kind, id } of network.elements) {
          const one = all.get(id)
          if (kind === 'resistor') expect(one?.w).toBeGreaterThanOrEqual(-1e-12 * scale)
          if (kind === 'capacitor') expect(Math.abs(one?.w ?? NaN)).toBeLessThanOrEqual(1e-12 * scale)
        }
      }),
    )
  })

  it('are reciprocal: a current here gives there what the same current there gives here', () => {
    fc.assert(
      fc.property(poweredNetwork, fc.integer({ min: 0, max: 7 }), fc.integer({ min: 0, max: 7 }), (network, a, b) => {
        const dead = network.elements.flatMap((element): Network['elements'] => {
          if (element.kind === 'voltage-source' || element.kind === 'current-source') return []
          return [element.kind === 'motor' ? { ...element, backEmfV: 0 } : element]
        })
        const transfer = (at: number, seen: number) => {
          const feed = { kind: 'current-source', id: 'test', from: 'ground', to: `n${at}`, currentA: 1 } as const
          return at50Hz({ ...network, elements: [...dead, { ...feed, phaseRad: 0 }] }).voltage[`n${seen}`]
        }
        const [ab, ba] = [transfer(a, b), transfer(b, a)]
        expect(Math.hypot(ab.re - ba.re, ab.im - ba.im)).toBeLessThanOrEqual(1e-9 * size(ab))
      }),
    )
  })
})
