import { describe, expect, it } from 'vitest'
import {
  compileOhms,
  makeOhmsTable,
  nodeIndex,
  ohmsBetween,
  readOhmmeter,
  solveAc,
  solveDc,
  type Network,
  type NetworkElement,
  type OhmsTable,
} from '../../../src/engines/network/index.ts'
import {
  spiceAc,
  spiceResistanceBatch,
  spiceShares,
  spiceVoltages,
  type ResistanceCase,
  type SpiceComplex,
} from '../../support/spice.ts'
import { randomElements, randomPowered, randomResistances } from './random-network.ts'

// The outside truth: ngspice 45.2 in the eecircuit-engine package.
const relative = 1e-6
/** Where an impedance or voltage is zero, both programs give rounding. */
const roundingOhm = 1e-12
const seeds = (count: number): number[] => Array.from({ length: count }, (_, i) => 1 + i)
const network = (elements: NetworkElement[]): Network => ({ format: 'thrum-network-1', elements })

const ourTable = ({ elements, probes }: ResistanceCase): OhmsTable => {
  const compiled = compileOhms(elements)
  const pairs = Int32Array.from(probes.flat(), (name) => nodeIndex(compiled, name))
  const table = makeOhmsTable(probes.length, elements.length)
  ohmsBetween(
    compiled,
    Float64Array.from(elements, (element) => element.resistanceOhm),
    pairs,
    table,
  )
  return table
}

const expectClose = (ours: SpiceComplex, theirs: SpiceComplex, scale: number, where: string): void => {
  const away = Math.hypot(ours.re - theirs.re, ours.im - theirs.im)
  expect(away, `${where}: ours ${ours.re} + j${ours.im}, ngspice ${theirs.re} + j${theirs.im}`).toBeLessThanOrEqual(
    relative * scale + roundingOhm,
  )
}

const size = (value: SpiceComplex): number => Math.hypot(value.re, value.im)

/** What 1 A between two nodes makes of the voltage between them. */
const ourImpedance = (elements: NetworkElement[], [from, to]: readonly [string, string], frequencyHz: number) => {
  const test: NetworkElement = { kind: 'current-source', id: 'test', from: to, to: from, currentA: 1, phaseRad: 0 }
  const solution = solveAc(network([...elements, test]), frequencyHz)
  if (solution.kind !== 'solved') throw new Error(JSON.stringify(solution))
  const [a, b] = [solution.voltage[from], solution.voltage[to]]
  return { re: a.re - b.re, im: a.im - b.im }
}

describe('against ngspice', { timeout: 60_000 }, () => {
  it('reads the resistances of random networks with ideal links and open elements', async () => {
    const cases = seeds(200).map(randomResistances)
    const theirs = await spiceResistanceBatch(cases)
    const kinds = { open: 0, same: 0, ohms: 0 }
    cases.forEach((one, at) =>
      ourTable(one).resistanceOhm.forEach((ohm, probe) => {
        const spice = theirs[at][probe]
        kinds[spice === Infinity ? 'open' : spice === 0 ? 'same' : 'ohms']++
        if (spice === Infinity) expect(ohm, `network ${at}`).toBe(Infinity)
        else expectClose({ re: ohm, im: 0 }, { re: spice, im: 0 }, spice, `network ${at} probe ${probe}`)
      }),
    )
    expect(kinds.open).toBeGreaterThan(40)
    expect(kinds.ohms).toBeGreaterThan(200)
  })

  it('shares each resistance among the elements as its sensitivity analysis does', async () => {
    // ngspice takes a difference quotient, so it is its own rounding that sets the tolerance here.
    const quotient = 1e-5
    for (const seed of seeds(40)) {
      const random = randomResistances(seed)
      const elements = random.elements.map((one, k) => ({
        ...one,
        resistanceOhm: 1 + ((seed * 7919 + k * 104729) % 997),
      }))
      const probe = ['n0', elements[elements.length - 1].to === 'n0' ? 'n1' : elements[elements.length - 1].to] as const
      const table = ourTable({ elements, probes: [probe] })
      const theirs = await spiceShares(elements, probe)
      theirs.forEach((share, k) =>
        expect(Math.abs(table.share[k] - share), `network ${seed} element ${k}`).toBeLessThanOrEqual(
          quotient * table.resistanceOhm[0],
        ),
      )
    }
  })

  it('reads every kind of element with the ohmmeter as ngspice does at DC', async () => {
    const cases = seeds(60).map((seed) => {
      const elements = randomElements(seed)
      return { elements, probe: [elements[0].from, elements[elements.length - 1].to] as const }
    })
    const meter = { testCurrentA: 1e-8, complianceV: 1 }
    const theirs = await spiceVoltages(
      cases.map(({ elements, probe: [from, to] }) => {
        const test: NetworkElement = {
          kind: 'current-source',
          id: 'test',
          from: to,
          to: from,
          currentA: 1,
          phaseRad: 0,
        }
        return { elements: [...elements, test], reference: to }
      }),
      null,
    )
    cases.forEach(({ elements, probe: [from, to] }, at) => {
      const spice = theirs[at].get(from)?.re ?? NaN
      const reading = readOhmmeter(network(elements), meter, from, to)
      const ohm = reading.kind === 'ohms' ? reading.resistanceOhm : NaN
      expectClose({ re: ohm, im: 0 }, { re: spice, im: 0 }, spice, `network ${at}`)
    })
  })

  it.each([50, 60, 400, 20_000])(
    'finds the impedances of random networks of every kind at %d Hz',
    async (frequencyHz) => {
      const cases = seeds(60).map((seed) => {
        const elements = randomElements(seed + frequencyHz)
        return { elements, probes: [['n0', 'n1'], ['n2', 'n0']] as const } // prettier-ignore
      })
      const theirs = await spiceAc(cases, frequencyHz)
      cases.forEach(({ elements, probes }, at) =>
        probes.forEach((probe, p) => {
          const spice = theirs[at][p]
          expectClose(ourImpedance(elements, probe, frequencyHz), spice, size(spice), `network ${at} probe ${p}`)
        }),
      )
    },
  )

  it.each([null, 50, 1000])('finds the voltages of random powered networks of every kind at %s Hz', async (hz) => {
    const cases = seeds(60).map((seed) => ({ elements: randomPowered(seed), reference: 'n0' }))
    const theirs = await spiceVoltages(cases, hz)
    cases.forEach(({ elements }, at) => {
      const solution = hz === null ? solveDc(network(elements)) : solveAc(network(elements), hz)
      if (solution.kind !== 'solved') throw new Error(`network ${at}: ${JSON.stringify(solution)}`)
      const largest = Math.max(...[...theirs[at].values()].map(size))
      for (const [node, spice] of theirs[at]) {
        expectClose(solution.voltage[node], spice, Math.max(size(spice), 1e-3 * largest), `network ${at} ${node}`)
      }
    })
  })
})
