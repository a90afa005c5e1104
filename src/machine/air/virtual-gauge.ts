import { mixSeed } from '../../base/mix-seed.ts'
import { seededRandom, type Random } from '../../base/random.ts'
import { usualInstruments } from '../../engines/airflow/index.ts'
import type { Job } from '../job.ts'
import { machineModel, type MachineModel } from '../model.ts'
import { truthNow } from '../practice.ts'
import { airExplanations, airParameters } from './air-explanations.ts'
import { wayOf } from './air-fit.ts'
import { airMachineOf, type AirMachine } from './air-machine.ts'
import { solveSetUp, type AirFigures } from './air-network.ts'
import type { GaugeReading } from './gauge-reading.ts'

/**
 * What a gauge shows on the virtual machine now: its air solved with figures drawn once for the machine and its hidden faults, and the
 * noise of the instrument. The same set-up on an unchanged machine reads the same. Null where the motor does not turn, or where the
 * blueprint says nothing of its air.
 */
export const virtualGauge = (job: Job, seed: number, setUp: Omit<GaugeReading, 'read'>): GaugeReading | null => {
  const machine = airMachineOf(job.blueprint, job.plate)
  if (machine.kind === 'refused') return null
  const model = machineModel(job.blueprint, job.plate)
  const suspect = truthNow(model, job, seed)
  if (!runs(model, suspect, seed)) return null
  const figures = hiddenFigures(machine.value, model, suspect, seed)
  return readFrom(machine.value, figures, setUp, seededRandom(mixSeed(seed, JSON.stringify(setUp))))
}

/** Whether the motor of the virtual machine turns: by chance where its fault comes and goes. */
const runs = (model: MachineModel, suspect: number, seed: number): boolean => {
  const check = model.blueprint.checks.find((one) => one.kind === 'air' && one.driven !== undefined)
  if (check === undefined || check.kind === 'meter' || check.driven === undefined) return true
  const { otherwise } = check.driven
  const column = check.outcomes.findIndex(({ id }) => id === otherwise)
  const dead = column < 0 ? 0 : model.graded(check, suspect)[column]
  return seededRandom(mixSeed(seed, 'runs')).uniform() >= dead
}

/** The figures of one machine: each drawn from what a sound one of the kind may have, or from what its fault makes of it. */
export const hiddenFigures = (machine: AirMachine, model: MachineModel, suspect: number, seed: number): AirFigures => {
  const explanations = airExplanations(machine, true)
  const faults = model.sets[suspect].map((f) => model.blueprint.faults[f])
  const faulty = faults.flatMap(({ id, air }) => {
    const shows = air !== undefined && seededRandom(mixSeed(seed, `shows ${id}`)).uniform() < air.share
    return shows ? Object.entries(explanations.find((one) => one.faults.includes(id))?.priors ?? {}) : []
  })
  const priors = new Map([...airParameters(machine, true).map(({ id, prior }) => [id, prior] as const), ...faulty])
  return Object.fromEntries(
    [...priors].map(([id, { median, sigma }]) => [
      id,
      median * Math.exp(sigma * seededRandom(mixSeed(seed, `air ${id}`)).normal()),
    ]),
  )
}

/** A gauge's reading of a machine with these figures, with the gauge's own noise; null where nothing is drawn. */
export const readFrom = (
  machine: AirMachine,
  figures: AirFigures,
  setUp: Omit<GaugeReading, 'read'>,
  random: Random,
): GaugeReading | null => {
  const answer = solveSetUp(machine, setUp, figures)
  if (answer.kind !== 'solved') return null
  const instrument = usualInstruments.find(({ id }) => id === setUp.instrument) ?? usualInstruments[0]
  const noisy = (value: number): number =>
    value * Math.exp(instrument.repeatability * random.normal()) + instrument.step * random.normal()
  if (instrument.measures === 'airflow') {
    return {
      ...setUp,
      read: { measure: 'airflow', airflowM3PerS: Math.max(0, noisy(answer.airflowM3PerS['opening'] ?? 0)) },
    }
  }
  const node = setUp.tapBefore === undefined ? wayOf(machine, setUp.way).node : `before ${setUp.tapBefore}`
  const suctionPa = noisy(-(answer.pressurePa[node] ?? 0))
  return { ...setUp, read: { measure: 'suction', suctionPa: Math.max(1, Math.round(suctionPa)) } }
}
