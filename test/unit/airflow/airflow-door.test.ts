import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { checkAirFit, runAirflow } from '../../../src/engines/airflow/index.ts'
import { candidates, fitInput, suctionAt } from './airflow-machine.ts'

const refusal = (task: unknown): string => {
  const result = runAirflow({ format: 'thrum-airflow-1', do: task })
  if (result.kind === 'ok') throw new Error('was not refused')
  return result.problems.map(problemText).join('\n')
}
const fitRefusal = (readings: readonly unknown[], more: Readonly<Record<string, unknown>> = {}): string => {
  const result = checkAirFit(fitInput(readings, more))
  if (result.kind === 'ok') throw new Error('was not refused')
  return result.problems.map(problemText).join('\n')
}
const plate = (diameterM: unknown, suctionPa: unknown) => ({
  kind: 'plate',
  plate: { id: 'p', diameterM },
  suctionPa,
})

describe('the door of the air engine', () => {
  it('takes quantities as SI numbers and as text with a unit alike', () => {
    const texts = runAirflow({ format: 'thrum-airflow-1', do: plate('19 mm', '9 kPa') })
    const numbers = runAirflow({ format: 'thrum-airflow-1', do: plate(0.019, 9000) })
    expect(texts).toEqual(numbers)
  })

  it('names what is wrong with a hole, a pressure, a unit', () => {
    expect(refusal(plate('0 mm', '9 kPa'))).toContain('do.plate.diameterM: A hole of 0 mm lets nothing through')
    expect(refusal(plate(19, '9 kPa'))).toContain('A hole 19 m wide')
    expect(refusal(plate('19 mm', '96 kPa'))).toContain(
      'do.suctionPa: 96.0 kPa is more than the fan of any vacuum cleaner gives',
    )
    expect(refusal(plate('19 mm', '78'))).toContain(
      'do.suctionPa: “78” has no unit. Write a number with its unit, such as 19.4 kPa',
    )
    expect(refusal(plate('19 mm', '-9 kPa'))).toContain('write it as a positive number')
    expect(refusal({ kind: 'density', air: { kind: 'room', barometerPa: '29.9 kPa', temperatureC: 20 } })).toContain(
      '500 to 1150 mbar',
    )
  })

  it('names the branch of a network that cannot be', () => {
    const branch = (more: unknown) => ({ kind: 'solve', network: { branches: [more] } })
    expect(refusal(branch({ kind: 'loss', id: 'hose', from: 'a', to: 'room' }))).toContain(
      'branches[0] (hose): “hose” loses no pressure',
    )
    expect(refusal(branch({ kind: 'hole', id: 'x', from: 'a', to: 'a', areaM2: '5 mm2' }))).toContain('Both ends')
    const points = [
      { airflowM3PerS: '0 L/s', suctionPa: '20 kPa' },
      { airflowM3PerS: '20 L/s', suctionPa: '21 kPa' },
    ]
    expect(
      refusal(branch({ kind: 'fan', id: 'fan', from: 'a', to: 'room', curve: { kind: 'points', points } })),
    ).toContain('does not fall')
  })

  it('says which nodes nothing joins to the room', () => {
    const branches = [
      { kind: 'loss', id: 'a', from: 'room', to: 'x', linearPaSPerM3: 1 },
      { kind: 'loss', id: 'b', from: 'y', to: 'z', linearPaSPerM3: 1 },
    ]
    expect(runAirflow({ format: 'thrum-airflow-1', do: { kind: 'solve', network: { branches } } })).toMatchObject({
      value: { answer: { kind: 'floating', nodes: ['y', 'z'] } },
    })
  })

  it('names the reading of a fit that points at nothing', () => {
    expect(fitRefusal([suctionAt('a', '25', '9 kPa')])).toContain(
      'readings[0] (a): There is no plate called “25”. Use one of 13, 19, 30.',
    )
    expect(fitRefusal([suctionAt('a', null, '9 kPa', { node: 'elbow' })])).toContain('There is no node called “elbow”')
    expect(fitRefusal([suctionAt('a', null, '9 kPa', { instrument: 'tone' })])).toContain(
      'There is no instrument called “tone”. Use one of gauge.',
    )
    expect(fitRefusal([suctionAt('a', null, '9 kPa', { removed: ['wand'] })])).toContain(
      'There is no branch called “wand”',
    )
    expect(fitRefusal([suctionAt('a', null, '34.9 kPa')])).toContain('at the end of the instrument’s scale (34.5 kPa)')
    expect(fitRefusal([suctionAt('a', null, '9 kPa'), suctionAt('a', null, '9 kPa')])).toContain(
      'Two entries are called “a”',
    )
    expect(
      fitRefusal([
        suctionAt('a', '19', '9 kPa', { removed: ['hose', 'cuff'] }),
        suctionAt('b', null, '9 kPa', { removed: ['hose', 'cuff'] }),
      ]),
    ).toContain('b: With this taken off, nothing joins mouth')
  })

  it('refuses a fit that would rest on nothing or on too much', () => {
    const flow = { measure: 'airflow', node: undefined, instrument: 'vane', value: '30 L/s' }
    const { node: _, ...airflow } = { ...suctionAt('a', null, 0), ...flow }
    const vane = { id: 'vane', measures: 'airflow', gain: 0.1, step: 0, repeatability: 0.03 }
    expect(fitRefusal([airflow], { instruments: [vane] })).toContain('airflow is to be read where nothing is open')
    const exact = [{ id: 'gauge', gain: 0, step: 0, repeatability: 0.01 }]
    expect(fitRefusal([suctionAt('a', '19', 0)], { instruments: exact })).toContain('the reading would be exact')
    const { node: __, ...speed } = { ...suctionAt('a', null, 1), measure: 'speed', branch: 'hose', instrument: 'tone' }
    expect(fitRefusal([speed])).toContain('There is no fan called “hose”. Use one of fan.')
    const leaks = [{ id: 'x', name: 'x', node: 'room' }]
    expect(fitRefusal([], { leaks })).toContain('There is no node called “room”')
    const hypotheses = [{ id: 'x', kind: 'leak', name: 'x', weight: 0, priors: { nose: { median: 1, sigma: 1 } } }]
    expect(fitRefusal([], { hypotheses })).toMatch(/weight 0[\s\S]*no parameter called “nose”. Use one of hose, filter/)
  })

  it('brings air power to standard air and nominal mains', () => {
    const air = { kind: 'given', pressurePa: '900 mbar', densityKgPerM3: 1.06 }
    const plates = ['13', '19', '30'].map((id) => ({ id, diameterM: `${id} mm` }))
    const readings = [15_914.7, 11_034.3, 4413.1].map((pa, i) => ({
      plate: plates[i].id,
      suctionPa: pa * (1.06 / 1.2) ** 0.67 * 0.97 ** (4 / 3),
    }))
    const result = runAirflow({
      format: 'thrum-airflow-1',
      do: { kind: 'air-power', air, mainsRatio: 0.97, plates, readings },
    })
    if (result.kind !== 'ok' || result.value.kind !== 'air-power') throw new Error('refused')
    const { standard } = result.value.answer
    expect(standard.points.map(({ suctionPa }) => suctionPa)[1]).toBeCloseTo(11_034.3, 6)
    // The linear fan of test/truth/airflow/air-power-peak: 247.5 W; three holes, so a looser parabola.
    expect(standard.peak.kind === 'peak' ? standard.peak.airPowerW : NaN).toBeCloseTo(247.5, -1)
  })

  it('names what is wrong in the other tasks', () => {
    const readings = [{ plate: '19', suctionPa: '9 kPa', instrument: 'g' }]
    const instruments = [{ id: 'g', gain: 0, step: 0, repeatability: 0.01 }]
    expect(refusal({ kind: 'before-after', instruments, before: { readings }, after: { readings } })).toContain(
      'List the plate first',
    )
    const run = { kind: 'meter-run', taps: 'corner', densityKgPerM3: 1.2, viscosityPaS: 1.8e-5 }
    expect(refusal({ ...run, pipeM: '50 mm', holeM: '60 mm', upstreamPa: '1 bar', differentialPa: '2 bar' })).toMatch(
      /as wide as the pipe[\s\S]*more than there is before it/,
    )
  })

  it('gives answers that are plain JSON', () => {
    const task = { kind: 'explain', ...fitInput([suctionAt('a', '19', '9.6 kPa')], { candidates }) }
    const result = runAirflow({ format: 'thrum-airflow-1', do: task })
    expect(JSON.parse(JSON.stringify(result))).toEqual(result)
  })
})
