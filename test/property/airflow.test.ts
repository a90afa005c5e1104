import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { airNetworkSchema, explainAir, solveAir, type AirNetwork } from '../../src/engines/airflow/index.ts'
import { makePredictor } from '../../src/engines/airflow/predict.ts'
import { usualParameters } from '../../src/engines/airflow/usual.ts'
import { candidates, fanSealed, fitOf, suctionAt } from '../unit/airflow/airflow-machine.ts'
import { times } from '../support/depth.ts'

const between = (low: number, high: number) =>
  fc.double({ min: 0, max: 1, noNaN: true }).map((u) => low * (high / low) ** u)

const nodes = ['room', 'a', 'b', 'c', 'd', 'e']
const twoNodes = fc
  .tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 1, max: 5 }))
  .map(([from, ahead]) => ({ from: nodes[from], to: nodes[(from + ahead) % 6] }))

const loss = fc
  .tuple(twoNodes, between(1e2, 1e5), between(1e3, 1e8), fc.constantFrom('linear', 'quadratic', 'both'))
  .map(
    ([ends, linear, quadratic, which]) =>
      ({
        kind: 'loss',
        id: '',
        ...ends,
        linearPaSPerM3: which === 'quadratic' ? 0 : linear,
        quadraticPaS2PerM6: which === 'linear' ? 0 : quadratic,
      }) as const,
  )
const hole = fc
  .tuple(twoNodes, between(1e-6, 1e-3))
  .map(([ends, areaM2]) => ({ kind: 'hole', id: '', ...ends, areaM2, discharge: 0.6 }) as const)
const curve = fc.oneof(
  fc
    .tuple(between(2e3, 3e4), between(5e-3, 8e-2), between(1, 2))
    .map(([sealedPa, openM3PerS, exponent]) => ({ kind: 'power', sealedPa, openM3PerS, exponent }) as const),
  fc.tuple(between(2e3, 3e4), between(5e-3, 8e-2)).map(
    ([sealedPa, openM3PerS]) =>
      ({
        kind: 'points',
        points: [0, 0.2, 0.5, 0.8, 1].map((x) => ({
          airflowM3PerS: x * openM3PerS,
          suctionPa: sealedPa * (1 - x ** 1.2),
        })),
      }) as const,
  ),
)
const fan = fc
  .tuple(twoNodes, curve, fc.constantFrom('room', 'inlet'), between(0.5, 1.2))
  .map(
    ([ends, made, airflowAs, speed]) =>
      ({ kind: 'fan', id: '', ...ends, curve: made, densityKgPerM3: 1.2, airflowAs, speed, pressure: 1 }) as const,
  )

/** Every node is joined to the room by a path of losses, whatever else there is. */
const network = fc
  .tuple(
    fc.array(loss, { maxLength: 6 }),
    fc.array(hole, { maxLength: 6 }),
    fc.array(fan, { minLength: 1, maxLength: 3 }),
    fc.array(loss, { minLength: 5, maxLength: 5 }),
    fc.boolean(),
  )
  .map(([losses, holes, fans, spine, thins]): AirNetwork => {
    const path = spine.map((one, i) => ({ ...one, from: nodes[i], to: nodes[i + 1] }))
    const branches = [...path, ...losses, ...holes, ...fans].map((one, i) => ({ ...one, id: `branch ${i}` }))
    return airNetworkSchema.parse({ losses: thins ? 'local-density' : 'room-density', branches })
  })

const solved = (net: AirNetwork) => {
  const solution = solveAir(net)
  if (solution.kind !== 'solved') throw new Error(JSON.stringify(solution))
  return solution
}
const runs = { numRuns: times(150), seed: 73 }

describe('any air network', () => {
  it('loses no mass at any node', () => {
    fc.assert(
      fc.property(network, (net) => {
        const { massKgPerS, pressurePa } = solved(net)
        const largest = Math.max(...Object.values(massKgPerS).map(Math.abs))
        for (const node of Object.keys(pressurePa)) {
          const sum = net.branches.reduce(
            (total, { id, from, to }) =>
              total + (from === node ? massKgPerS[id] : 0) - (to === node ? massKgPerS[id] : 0),
            0,
          )
          expect(Math.abs(sum)).toBeLessThanOrEqual(1e-8 * largest + 1.3e-8)
        }
      }),
      runs,
    )
  })

  it('lets air through losses and holes only downhill, and takes no power from them', () => {
    fc.assert(
      fc.property(network, (net) => {
        const { airflowM3PerS, pressurePa } = solved(net)
        for (const { kind, id, from, to } of net.branches) {
          if (kind === 'fan') continue
          const drop = (pressurePa[from] ?? 0) - (pressurePa[to] ?? 0)
          expect(drop * airflowM3PerS[id]).toBeGreaterThanOrEqual(-1e-12)
        }
      }),
      runs,
    )
  })

  it('has one solution, whatever the order and the direction its losses and holes are written in', () => {
    fc.assert(
      fc.property(network, fc.infiniteStream(fc.boolean()), fc.infiniteStream(fc.nat()), (net, flips, keys) => {
        const first = solved(net)
        const order = net.branches.map((branch) => ({ branch, key: Number(keys.next().value) }))
        const shuffled = order.sort((a, b) => a.key - b.key).map(({ branch }) => branch)
        expect(solved({ ...net, branches: shuffled })).toEqual(first)
        const turned = net.branches.map((one) =>
          one.kind !== 'fan' && flips.next().value === true ? { ...one, from: one.to, to: one.from } : one,
        )
        const second = solved({ ...net, branches: turned })
        for (const [node, pa] of Object.entries(first.pressurePa)) {
          expect(Math.abs(second.pressurePa[node] - pa)).toBeLessThanOrEqual(1e-6 * Math.abs(pa) + 1e-3)
        }
      }),
      { numRuns: times(75), seed: 123 },
    )
  })

  it('follows the fan laws: with quadratic losses flow goes as speed and pressure as its square', () => {
    const series = fc.tuple(between(1e5, 1e7), between(1e5, 1e7), between(1e5, 1e8), between(0.5, 1.5))
    fc.assert(
      fc.property(series, ([b1, b2, b3, s]) => {
        const at = (speed: number) =>
          solved(
            airNetworkSchema.parse({
              losses: 'room-density',
              branches: [
                { kind: 'loss', id: 'hose', from: 'room', to: 'box', quadraticPaS2PerM6: b1 },
                { kind: 'loss', id: 'leak', from: 'room', to: 'box', quadraticPaS2PerM6: b3 },
                { kind: 'loss', id: 'filter', from: 'box', to: 'eye', quadraticPaS2PerM6: b2 },
                {
                  kind: 'fan',
                  id: 'fan',
                  from: 'eye',
                  to: 'room',
                  speed,
                  curve: { kind: 'power', sealedPa: 2e4, openM3PerS: 0.04 },
                },
              ],
            }),
          )
        const [one, other] = [at(1), at(s)]
        expect(other.airflowM3PerS['fan'] / one.airflowM3PerS['fan']).toBeCloseTo(s, 4)
        expect(other.pressurePa['box'] / one.pressurePa['box']).toBeCloseTo(s * s, 4)
      }),
    )
  })

  it('adds losses in series, and the inverse roots of quadratic ones side by side', () => {
    fc.assert(
      fc.property(between(1e4, 1e7), between(1e4, 1e7), (b1, b2) => {
        const flow = (branches: readonly unknown[]): number =>
          solved(
            airNetworkSchema.parse({
              losses: 'room-density',
              branches: [
                ...branches,
                {
                  kind: 'fan',
                  id: 'fan',
                  from: 'eye',
                  to: 'room',
                  curve: { kind: 'power', sealedPa: 2e4, openM3PerS: 0.04 },
                },
              ],
            }),
          ).airflowM3PerS['fan']
        const part = (id: string, from: string, to: string, quadraticPaS2PerM6: number) => ({
          kind: 'loss',
          id,
          from,
          to,
          quadraticPaS2PerM6,
        })
        const series = flow([part('x', 'room', 'm', b1), part('y', 'm', 'eye', b2)])
        expect(series / flow([part('x', 'room', 'eye', b1 + b2)])).toBeCloseTo(1, 5)
        const beside = flow([part('x', 'room', 'eye', b1), part('y', 'room', 'eye', b2)])
        expect(beside / flow([part('x', 'room', 'eye', (b1 ** -0.5 + b2 ** -0.5) ** -2)])).toBeCloseTo(1, 5)
      }),
    )
  })

  it('sucks less everywhere once it leaks', () => {
    fc.assert(
      fc.property(between(1e-6, 3e-4), fc.constantFrom('mouth', 'bag', 'eye'), fc.boolean(), (areaM2, node, thins) => {
        const { network: sound } = fitOf([])
        const plate = { kind: 'hole', id: 'plate', from: 'room', to: 'mouth', areaM2: 2.8e-4, discharge: 0.6 } as const
        const losses = thins ? 'local-density' : 'room-density'
        const tight: AirNetwork = { ...sound, losses, branches: [...sound.branches, plate] }
        const leak = { kind: 'hole', id: 'leak', from: 'room', to: node, areaM2, discharge: 0.6 } as const
        const before = solved(tight)
        const after = solved({ ...tight, branches: [...tight.branches, leak] })
        for (const at of ['mouth', 'bag', 'eye']) expect(after.pressurePa[at]).toBeGreaterThan(before.pressurePa[at])
        expect(after.airflowM3PerS['fan']).toBeGreaterThan(before.airflowM3PerS['fan'])
        expect(after.airflowM3PerS['plate']).toBeLessThan(before.airflowM3PerS['plate'])
      }),
    )
  })
})

describe('a fit', () => {
  const readings = [
    suctionAt('sealed', null, 19_400),
    suctionAt('19 mm', '19', 8400),
    suctionAt('across', '30', 2500, { node: 'bag', against: 'mouth' }),
    fanSealed(21_700),
  ]

  it('has exact derivatives: those of plain differences', () => {
    const fit = fitOf([...readings, suctionAt('unmeasured mains', '30', 2700, { mainsRatio: null })])
    const predictor = makePredictor(fit, usualParameters(fit), fit.readings)
    const logs = fc.array(fc.double({ min: -0.7, max: 0.7, noNaN: true }), {
      minLength: predictor.coordinates,
      maxLength: predictor.coordinates,
    })
    fc.assert(
      fc.property(logs, fc.nat({ max: predictor.coordinates - 1 }), (at, coordinate) => {
        const step = 1e-4
        const moved = (by: number) => predictor.predict(at.map((log, i) => (i === coordinate ? log + by : log)))
        const [up, down, middle] = [moved(step), moved(-step), moved(0)]
        middle.forEach((prediction, i) => {
          const difference = ((up[i]?.value ?? NaN) - (down[i]?.value ?? NaN)) / (2 * step)
          const exact = prediction?.gradient[coordinate] ?? NaN
          // What the solver leaves of a prediction, a share of 2e-8, over twice the step.
          const noise = 1e-4 * Math.max(Math.abs(prediction?.value ?? NaN), 1e4)
          expect(Math.abs(exact - difference)).toBeLessThanOrEqual(1e-4 * Math.abs(exact) + noise)
        })
      }),
      { numRuns: times(30), seed: 19 },
    )
  })

  it('answers whatever the gauge says: probabilities that sum to one, figures above zero, limits about them', () => {
    const anyReadings = fc
      .array(
        fc.record({
          plate: fc.constantFrom(null, '13', '19', '30'),
          value: between(1, 34_000),
          node: fc.constantFrom('mouth', 'bag', 'eye'),
          mainsRatio: fc.constantFrom(null, 0.9, 1),
        }),
        { maxLength: 5 },
      )
      .map((list) => list.map(({ plate, value, ...more }, i) => suctionAt(`reading ${i}`, plate, value, more)))
    fc.assert(
      fc.property(anyReadings, (any) => {
        const { explanations, next } = explainAir(fitOf(any, { candidates }))
        expect(explanations.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9)
        for (const { value, low, high } of explanations.flatMap(({ figures }) => figures)) {
          expect(low).toBeGreaterThan(0)
          expect(low).toBeLessThanOrEqual(value)
          expect(high).toBeGreaterThanOrEqual(value)
          expect(high).toBeLessThan(Infinity)
        }
        for (const { bits, betweenLeadingBits } of next) {
          expect(bits).toBeGreaterThanOrEqual(0)
          expect(betweenLeadingBits).toBeLessThanOrEqual(1.001)
        }
      }),
      { numRuns: times(20), seed: 268 },
    )
  })

  it('does not depend on the order of readings, leaks and candidates', () => {
    const probabilities = (fit: Parameters<typeof explainAir>[0]) =>
      Object.fromEntries(explainAir(fit).explanations.map(({ id, probability }) => [id, probability]))
    const first = probabilities(fitOf(readings, { candidates }))
    fc.assert(
      fc.property(fc.shuffledSubarray(readings, { minLength: readings.length }), (shuffled) => {
        const { leaks } = fitOf(readings)
        const other = probabilities(
          fitOf(shuffled, { leaks: [...leaks].reverse(), candidates: [...candidates].reverse() }),
        )
        for (const [id, probability] of Object.entries(first))
          expect(Math.abs(other[id] - probability)).toBeLessThan(1e-4)
      }),
      { numRuns: times(6), seed: 285 },
    )
  })

  it('finds the machine that made the readings within its own limits', () => {
    const truth = fc.tuple(between(0.6, 8), between(2, 120), between(0.85, 1.05))
    const counted = { inside: 0, all: 0 }
    fc.assert(
      fc.property(truth, ([hose, lidMm2, speed]) => {
        const plain = fitOf([])
        const made = (removed: readonly string[], plateM2: number | null, node: string): number => {
          const extra = [
            { kind: 'hole', id: 'lid', from: 'room', to: 'bag', areaM2: lidMm2 * 1e-6, discharge: 0.6 } as const,
            ...(plateM2 === null
              ? []
              : [{ kind: 'hole', id: 'p', from: 'room', to: 'mouth', areaM2: plateM2, discharge: 0.6 } as const]),
          ]
          const branches = [...plain.network.branches, ...extra]
            .filter(({ id }) => !removed.includes(id))
            .map((one) =>
              one.kind === 'fan'
                ? { ...one, speed }
                : one.id === 'hose' && one.kind === 'loss'
                  ? { ...one, quadraticPaS2PerM6: 4e6 * hose }
                  : one,
            )
          return -solved({ ...plain.network, branches }).pressurePa[node]
        }
        const area = (mm: number) => (Math.PI / 4) * mm ** 2 * 1e-6
        const own = [
          suctionAt('s', null, made([], null, 'mouth')),
          suctionAt('19', '19', made([], area(19), 'mouth')),
          suctionAt('b', '30', made([], area(30), 'bag'), { node: 'bag' }),
          suctionAt('m', '30', made([], area(30), 'mouth')),
          fanSealed(made(['hose', 'filter', 'lid'], null, 'eye')),
        ]
        const several = explainAir(fitOf(own)).explanations.find(({ id }) => id === 'several')
        for (const [id, value] of [
          ['hose', hose],
          ['lid', lidMm2],
        ] as const) {
          const figure = several?.figures.find((one) => one.id === id)
          if (figure === undefined) throw new Error(id)
          counted.all++
          if (figure.low <= value && value <= figure.high) counted.inside++
        }
      }),
      { numRuns: times(40), seed: 2024 },
    )
    expect(counted.inside / counted.all).toBeGreaterThan(0.9)
  })
})
