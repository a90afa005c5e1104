import { airFitSchema, explainAir, solveAir, type AirFit, type AirNetwork } from '../src/engines/airflow/index.ts'
import { medianMs } from './median.ts'

const solves = 400
const repeats = 15
const solveBarMs = 1
const explainBarMs = 200
/** The two ways of solving end at 1e-9 of the flow; sampled and Laplace probabilities differ by their own errors. */
const sameFlowWithin = 1e-6
const sameProbabilityWithin = 0.05

const milli = 1e-3
const areaM2 = (diameterMm: number): number => (Math.PI / 4) * (diameterMm * milli) ** 2

/** A cylinder: hose, bag, two filters, a fan, a filter behind it; readings at the mouth, inside, and at the fan. */
const makeFit = (draws: number | null): AirFit => {
  const reading = (id: string, node: string, plate: string | null, value: number, removed: readonly string[] = []) => ({
    id,
    name: id,
    measure: 'suction',
    node,
    openings: plate === null ? [] : [{ node: 'mouth', plate }],
    removed,
    mainsRatio: 1,
    instrument: 'gauge',
    value,
  })
  return airFitSchema.parse({
    network: {
      branches: [
        { kind: 'loss', id: 'hose', from: 'mouth', to: 'bag', quadraticPaS2PerM6: 4e6 },
        { kind: 'loss', id: 'bag', from: 'bag', to: 'box', linearPaSPerM3: 2e4 },
        { kind: 'loss', id: 'filter', from: 'box', to: 'eye', linearPaSPerM3: 1e4 },
        { kind: 'loss', id: 'exhaust', from: 'out', to: 'room', linearPaSPerM3: 8e3, quadraticPaS2PerM6: 2e5 },
        {
          kind: 'fan',
          id: 'fan',
          from: 'eye',
          to: 'out',
          curve: { kind: 'power', sealedPa: 22_000, openM3PerS: 0.045, exponent: 1.1 },
        },
      ],
    },
    leaks: [
      { id: 'cuff', name: 'hose cuff', node: 'mouth' },
      { id: 'lid', name: 'lid', node: 'box' },
    ],
    bleeds: [{ id: 'bleed', name: 'bleed valve', node: 'eye' }],
    plates: [
      { id: '19', diameterM: '19 mm' },
      { id: '30', diameterM: '30 mm' },
    ],
    instruments: [{ id: 'gauge', gain: 0.005, step: 100, repeatability: 0.01 }],
    readings: [
      reading('sealed', 'mouth', null, 19_400),
      reading('19', 'mouth', '19', 8300),
      reading('30', 'mouth', '30', 2600),
      reading('30 in the bag', 'bag', '30', 5400),
      reading('30 at the fan', 'eye', '30', 6600),
      reading('fan sealed', 'eye', null, 21_900, ['hose', 'bag', 'filter', 'cuff', 'lid']),
    ],
    candidates: [
      {
        id: 'lid taped',
        name: 'sealed, lid taped',
        measure: 'suction',
        node: 'mouth',
        removed: ['lid'],
        mainsRatio: 1,
        instrument: 'gauge',
      },
    ],
    sampling: draws === null ? null : { seed: 3, draws },
  })
}

const makeNetwork = (): AirNetwork => {
  const { network } = makeFit(null)
  const hole = (id: string, to: string, diameterMm: number) =>
    ({ kind: 'hole', id, from: 'room', to, areaM2: areaM2(diameterMm), discharge: 0.6 }) as const
  return {
    ...network,
    losses: 'room-density',
    branches: [...network.branches, hole('plate', 'mouth', 19), hole('leak', 'box', 6)],
  }
}

/** Root of a rising function by bisection, to the last digit. */
const bisect = (rising: (x: number) => number, from: number, to: number): number => {
  let [low, high] = [from, to]
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (rising(middle) > 0) high = middle
    else low = middle
  }
  return (low + high) / 2
}

/** The same network as one would do it by hand: guess the suction in the box, find the flow through the hose, compare with the fan. */
const byBisection = (): number => {
  const through = (diameterMm: number, suctionPa: number): number => {
    const epsilon = 1 - 0.351 * (1 - ((101_325 - suctionPa) / 101_325) ** (1 / 1.4))
    return 0.6 * epsilon * areaM2(diameterMm) * Math.sqrt((2 * Math.max(0, suctionPa)) / 1.2)
  }
  const atMouth = (boxPa: number): number =>
    bisect((q) => q - through(19, Math.max(0, boxPa - 2e4 * q - 4e6 * q * q)), 0, 0.1)
  const excess = (boxPa: number): number => {
    const total = atMouth(boxPa) + through(6, boxPa)
    const asked = boxPa + 1e4 * total + 8e3 * total + 2e5 * total * total
    return total - 0.045 * Math.max(0, 1 - asked / 22_000) ** (1 / 1.1)
  }
  return atMouth(bisect(excess, 0, 22_000))
}

/**
 * Milliseconds of one solve against nested bisection, and of explaining six readings against the same with sampled evidence. Throws
 * when the answers differ or a bar is passed.
 */
export const run = () => {
  const network = makeNetwork()
  const solution = solveAir(network)
  const flow = solution.kind === 'solved' ? solution.airflowM3PerS['plate'] : NaN
  if (!(Math.abs(flow - byBisection()) <= sameFlowWithin * flow))
    throw new Error(`flows differ: ${flow}, ${byBisection()}`)
  const solve = medianMs(() => solveAir(network), solves)
  const bisection = medianMs(byBisection, solves)
  const quick = explainAir(makeFit(null))
  const sampled = explainAir(makeFit(1000))
  for (const { id, probability } of quick.explanations) {
    const other = sampled.explanations.find((one) => one.id === id)?.probability ?? NaN
    if (!(Math.abs(probability - other) < sameProbabilityWithin)) throw new Error(`${id}: ${probability} and ${other}`)
  }
  const explain = medianMs(() => explainAir(makeFit(null)), repeats)
  const sampling = medianMs(() => explainAir(makeFit(1000)), 3)
  const barred = [
    { name: 'an air network of five nodes, against nested bisection', ours: solve, theirs: bisection, bar: solveBarMs },
    {
      name: 'explaining six gauge readings, against 1,000 draws each',
      ours: explain,
      theirs: sampling,
      bar: explainBarMs,
    },
  ]
  for (const { name, ours, bar } of barred) if (ours > bar) throw new Error(`${name}: ${ours} ms, bar ${bar} ms`)
  return barred.map((one) => ({ ...one, ratio: one.theirs / one.ours }))
}
