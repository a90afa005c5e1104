import { describe, expect, it } from 'vitest'
import { explainAir, type AirExplanation } from '../../../src/engines/airflow/index.ts'
import { candidates, fanSealed, fitOf, suctionAt } from './airflow-machine.ts'

/**
 * Readings of the constructed machine of test/truth/airflow/fault-signatures, as worked out there outside this project:
 * sealed, at 19 mm, at 30 mm.
 */
const shown = (sealed: number, at19: number, at30: number) => [
  suctionAt('sealed', null, sealed),
  suctionAt('19 mm', '19', at19),
  suctionAt('30 mm', '30', at30),
]
const clean = shown(22_000, 9570.3, 3066.5)
const filterTimes6 = shown(22_000, 8426.2, 2495.1)
const hoseTimes4 = shown(22_000, 7255.2, 1786)
const motorAt90 = shown(17_820, 7698.2, 2466.5)
const leak8mm = shown(19_378, 8449.5, 2744.7)

const probability = ({ explanations }: AirExplanation, kind: string): number =>
  explanations.filter((one) => one.kind === kind).reduce((sum, one) => sum + one.probability, 0)
const figure = ({ explanations }: AirExplanation, id: string): number =>
  explanations[0].figures.find((one) => one.id === id)?.value ?? NaN

describe('what gauge readings say', () => {
  it('of a sound machine: nothing wrong', () => {
    const answer = explainAir(fitOf(clean))
    expect(answer.explanations[0].id).toBe('sound')
    expect(answer.unexplained).toEqual([])
  })

  it('of a loaded filter: a blockage six times clean, in the filter rather than the hose', () => {
    const answer = explainAir(fitOf(filterTimes6))
    expect(answer.explanations[0].id).toBe('blockage:filter')
    expect(figure(answer, 'filter')).toBeCloseTo(6, 0)
  })

  it('of a blocked hose, from the mouth only: a blockage, but not for certain where; a tap behind the hose settles it', () => {
    const mouth = explainAir(fitOf(hoseTimes4, { candidates }))
    expect(probability(mouth, 'blockage')).toBeGreaterThan(0.95)
    expect(mouth.notToldApart.map(({ explanations }) => explanations)).toContainEqual([
      'blockage:hose',
      'blockage:filter',
    ])
    expect(mouth.notSeen).toContain('filter')
    expect(mouth.next[0].id).toBe('across the hose')
    const tap = suctionAt('bag at 30 mm', '30', 1786 + 16e6 * 0.023037 ** 2, { node: 'bag' })
    const settled = explainAir(fitOf([...hoseTimes4, tap]))
    expect(settled.explanations[0]).toMatchObject({ id: 'blockage:hose' })
    expect(settled.explanations[0].probability).toBeGreaterThan(0.95)
    expect(figure(settled, 'hose')).toBeCloseTo(4, 1)
    expect(settled.notToldApart).toEqual([])
  })

  it('of a slow motor: slow or leaking, and the check that settles it is to seal the fan alone', () => {
    const mouth = explainAir(fitOf(motorAt90, { candidates }))
    expect(mouth.next[0].id).toBe('fan alone sealed')
    expect(mouth.next[0].betweenLeadingBits).toBeGreaterThan(0.9)
    const settled = explainAir(fitOf([...motorAt90, fanSealed(17_820)]))
    expect(settled.explanations[0].id).toBe('tired-motor:fan:speed')
    expect(figure(settled, 'fan:speed')).toBeCloseTo(0.9, 2)
  })

  it('of a leak before the fan: its area in mm², once the fan alone has been sealed', () => {
    const answer = explainAir(fitOf([...leak8mm, fanSealed(22_000)]))
    expect(answer.explanations[0].id).toBe('leak:lid')
    const area = answer.explanations[0].figures.find(({ id }) => id === 'lid')
    const true8mm = (Math.PI / 4) * 8 ** 2
    expect(area?.low).toBeLessThan(true8mm)
    expect(area?.high).toBeGreaterThan(true8mm)
    expect(area?.value).toBeCloseTo(true8mm, -1)
    expect(probability(answer, 'leak')).toBeGreaterThan(0.95)
  })

  it('of a motor on low mains: nothing wrong when the mains was measured, mains or motor when it was not', () => {
    const low = (mainsRatio: number | null) =>
      [...shown(22_000 * 0.88, 9570.3 * 0.88, 3066.5 * 0.88), fanSealed(22_000 * 0.88)].map((one) => ({
        ...one,
        mainsRatio,
      }))
    const measured = explainAir(fitOf(low(0.88 ** (3 / 4))))
    expect(measured.explanations[0].id).toBe('sound')
    const unmeasured = explainAir(fitOf(low(null)))
    expect(unmeasured.explanations.map(({ id }) => id)).toContain('low-mains:mains')
    expect(probability(unmeasured, 'low-mains') + probability(unmeasured, 'sound')).toBeGreaterThan(0.5)
  })

  it('of thin air on a hill: nothing wrong', () => {
    const air = { kind: 'given', pressurePa: '845.6 mbar', densityKgPerM3: 1.005 }
    // Suction as density to the 2/3 (derived for a series motor; the customary correction): 0.888 of that at sea level.
    const sealed = 22_000 * (1.005 / 1.2) ** (2 / 3)
    const answer = explainAir(fitOf([suctionAt('sealed', null, sealed, { air })]))
    expect(answer.explanations[0].id).toBe('sound')
    expect(figure(answer, 'fan:speed')).toBeCloseTo(1, 2)
    const asIfAtSea = explainAir(fitOf([suctionAt('sealed', null, sealed)]))
    const speedWhenSound = asIfAtSea.explanations
      .find(({ id }) => id === 'sound')
      ?.figures.find(({ id }) => id === 'fan:speed')
    expect(speedWhenSound?.value).toBeLessThan(0.98)
  })

  it('of readings that contradict each other: which one fits no machine', () => {
    const more = [suctionAt('30 mm again', '30', 3060), suctionAt('13 mm', '13', 15_100)]
    const wrong = [suctionAt('sealed', null, 22_000), suctionAt('19 mm', '19', 2000), suctionAt('30 mm', '30', 3066)]
    const answer = explainAir(fitOf([...wrong, ...more]))
    expect(answer.unexplained.map(({ reading }) => reading)).toEqual(['19 mm'])
    const [worst] = answer.unexplained
    expect(worst.othersAgree).toBe(true)
    expect(worst.sigma).toBeGreaterThan(5)
    expect(worst.text).toBe(
      `The reading “19 mm” is ${worst.sigma.toFixed(1)} sigma from any machine that shows the others`,
    )
  })

  it('gives nearly the same probabilities by sampling, and the same ones for the same seed', () => {
    const sampling = { seed: 11, draws: 500 }
    const quick = explainAir(fitOf([...leak8mm, fanSealed(22_000)]))
    const sampled = explainAir(fitOf([...leak8mm, fanSealed(22_000)], { sampling }))
    for (const { id, probability: one } of quick.explanations) {
      const other = sampled.explanations.find((found) => found.id === id)?.probability ?? NaN
      expect(Math.abs(one - other), id).toBeLessThan(0.1)
    }
    expect(explainAir(fitOf([...leak8mm, fanSealed(22_000)], { sampling }))).toEqual(sampled)
  })

  it('without any reading: the weights given, and nothing seen', () => {
    const answer = explainAir(fitOf([]))
    expect(answer.explanations.reduce((sum, one) => sum + one.probability, 0)).toBeCloseTo(1, 12)
    expect(answer.explanations[0].figures.every(({ learned }) => Math.abs(learned) < 1e-9)).toBe(true)
  })
})
