import { describe, expect, it } from 'vitest'
import {
  handheldOhmmeter,
  maximumOhm,
  networkProblem,
  readOhmmeter,
  runNetwork,
  type Network,
} from '../../../src/engines/network/index.ts'
import { problemText } from '../../../src/base/problem.ts'

const dead: Network = {
  format: 'thrum-network-1',
  elements: [
    { kind: 'resistor', id: 'flex', from: 'plug', to: 'switch', resistanceOhm: 0.2 },
    { kind: 'switch', id: 'switch', from: 'switch', to: 'motor', closed: true, contactOhm: 0 },
    { kind: 'resistor', id: 'motor', from: 'motor', to: 'neutral', resistanceOhm: 4 },
    { kind: 'capacitor', id: 'suppressor', from: 'plug', to: 'metal', capacitanceF: 2.5e-9 },
    { kind: 'resistor', id: 'leak', from: 'neutral', to: 'metal', resistanceOhm: 50e6 },
  ],
}

describe('the ohmmeter', () => {
  it('reads ohms through contacts and nothing through a charged capacitor', () => {
    const reading = readOhmmeter(dead, handheldOhmmeter, 'plug', 'neutral')
    expect(reading).toMatchObject({ kind: 'ohms' })
    expect(reading.kind === 'ohms' && reading.resistanceOhm).toBeCloseTo(4.2, 12)
    expect(readOhmmeter(dead, handheldOhmmeter, 'motor', 'switch')).toEqual({ kind: 'ohms', resistanceOhm: 0 })
    expect(readOhmmeter({ ...dead, elements: dead.elements.slice(0, 4) }, handheldOhmmeter, 'plug', 'metal')).toEqual({
      kind: 'open',
    })
  })

  it('reads open above what its voltage can drive', () => {
    const stronger = { testCurrentA: 1e-6, complianceV: 60 }
    expect(maximumOhm(handheldOhmmeter)).toBeLessThan(50e6)
    expect(readOhmmeter(dead, handheldOhmmeter, 'neutral', 'metal')).toEqual({ kind: 'open' })
    expect(readOhmmeter(dead, stronger, 'neutral', 'metal')).toMatchObject({ kind: 'ohms' })
  })

  it('names an unknown node, and refuses a network with any source', () => {
    expect(readOhmmeter(dead, handheldOhmmeter, 'plug', 'fan')).toEqual({ kind: 'unknown-node', node: 'fan' })
    const ends = { from: 'plug', to: 'neutral' }
    const live = (element: Network['elements'][number]) =>
      readOhmmeter({ ...dead, elements: [...dead.elements, element] }, handheldOhmmeter, 'plug', 'neutral')
    const mains = live({ kind: 'voltage-source', id: 'mains', ...ends, voltageV: 230, phaseRad: 0 })
    expect(mains).toEqual({ kind: 'live', element: 'mains' })
    const feed = live({ kind: 'current-source', id: 'feed', ...ends, currentA: 1, phaseRad: 0 })
    expect(feed).toEqual({ kind: 'live', element: 'feed' })
    const spun = { resistanceOhm: 1, inductanceH: 0, backEmfOhm: 0 }
    const generating = live({ kind: 'motor', id: 'spun', ...ends, ...spun, backEmfV: 2 })
    expect(generating).toEqual({ kind: 'live', element: 'spun' })
    expect(live({ kind: 'motor', id: 'still', ...ends, ...spun, backEmfV: 0 })).toMatchObject({ kind: 'ohms' })
  })
})

describe('networkProblem', () => {
  it('gives the network with its defaults filled in', () => {
    const element = { kind: 'fuse', id: 'fuse', from: 'a', to: 'b', intact: true }
    expect(networkProblem({ format: 'thrum-network-1', elements: [element] })).toEqual({
      kind: 'ok',
      value: { format: 'thrum-network-1', elements: [{ ...element, resistanceOhm: 0 }] },
    })
  })

  it('names elements with one id and elements on one node', () => {
    const twice = { ...dead, elements: [...dead.elements, { ...dead.elements[0], to: 'plug' }] }
    const result = networkProblem(twice)
    const texts = result.kind === 'refused' ? result.problems.map(problemText) : []
    expect(texts).toHaveLength(2)
    expect(texts[0]).toContain('Two elements are called “flex”')
    expect(texts[1]).toContain('Both ends of “flex” are on node “plug”')
  })

  it.each([
    ['a negative resistance', { ...dead.elements[0], resistanceOhm: -1 }],
    ['an infinite resistance', { ...dead.elements[0], resistanceOhm: Infinity }],
    ['an unknown kind', { kind: 'valve', id: 'v', from: 'a', to: 'b' }],
    ['a nameless node', { ...dead.elements[0], to: '' }],
  ])('refuses %s at its place', (_, element) => {
    const result = networkProblem({ ...dead, elements: [dead.elements[0], element] })
    expect(result.kind === 'refused' && result.problems[0].where).toMatch(/^elements\[1\]/)
  })
})

describe('runNetwork', () => {
  it('answers each request in plain JSON', () => {
    for (const task of [
      { kind: 'dc' },
      { kind: 'ac', frequencyHz: 50 },
      { kind: 'ohms', from: 'plug', to: 'neutral' },
    ]) {
      const result = runNetwork({ network: dead, do: task })
      expect(result.kind).toBe('ok')
      expect(JSON.parse(JSON.stringify(result))).toEqual(result)
    }
    expect(runNetwork({ network: dead, do: { kind: 'ohms', from: 'plug', to: 'metal' } })).toEqual({
      kind: 'ok',
      value: { kind: 'open' },
    })
    const meter = { testCurrentA: 1e-9, complianceV: 1 }
    expect(runNetwork({ network: dead, do: { kind: 'ohms', from: 'plug', to: 'metal', meter } })).toMatchObject({
      value: { kind: 'ohms' },
    })
  })

  it('refuses what is not a request, and a network with problems', () => {
    expect(runNetwork(null).kind).toBe('refused')
    expect(runNetwork({ network: dead, do: { kind: 'ac', frequencyHz: 0 } }).kind).toBe('refused')
    const twice = { ...dead, elements: [dead.elements[0], dead.elements[0]] }
    expect(runNetwork({ network: twice, do: { kind: 'dc' } })).toMatchObject({ problems: [{ code: 'duplicate-id' }] })
  })
})
