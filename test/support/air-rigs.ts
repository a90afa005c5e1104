import { valueOf } from '../../src/base/result.ts'
import { seededRandom, type Random } from '../../src/base/random.ts'
import { blueprints } from '../../src/blueprint/library.ts'
import { explainAir, type AirFit } from '../../src/engines/airflow/index.ts'
import { fitHypothesis, instrumentOf, logsAt, readingSigma } from '../../src/engines/airflow/hypothesis-fit.ts'
import { makePredictor } from '../../src/engines/airflow/predict.ts'
import { airFitOf } from '../../src/machine/air/air-fit.ts'
import { airMachineOf } from '../../src/machine/air/air-machine.ts'
import { hole, sealed, suctionAt } from './gauge.ts'

/** Of how many figures the 90 % band held the truth. */
export type Coverage = { readonly figures: number; readonly held: number }

const inNinety = 1.644854
const in95 = 1.959964
/** Figures of which the readings tell less than this share say nothing about the fit. */
const learnedEnough = 0.3

const blueprint = blueprints.find(({ id }) => id === 'bagged-cylinder')!
const machine = valueOf(airMachineOf(blueprint, blueprint.plate))
const set = [
  suctionAt(sealed, 20_000),
  suctionAt(hole(13), 12_000),
  suctionAt(hole(19), 7000),
  suctionAt(hole(26), 3000),
  suctionAt(hole(32), 1700),
  suctionAt(sealed, 21_000, { way: 'inlet' }),
  suctionAt(hole(19), 8000, { way: 'inlet' }),
  suctionAt(hole(26), 4000, { tapBefore: 'motor-fan' }),
].map((reading, i) => ({ note: `g${i}`, reading }))
const explanations = ['sound', 'blocked pre-motor-filter', 'leak after hose', 'motor slow'] as const

/**
 * Machines and rigs drawn from the priors of an explanation, read with noise, and fitted under that explanation: how often the stated
 * 90 % band of a figure holds the true one.
 */
export const airCoverage = (rigs: number, seed: number): Coverage => {
  const random = seededRandom(seed)
  let figures = 0
  let held = 0
  for (let n = 0; n < rigs; n++) {
    const one = oneRig(explanations[n % explanations.length], random)
    figures += one.figures
    held += one.held
  }
  return { figures, held }
}

const oneRig = (explanation: string, random: Random): Coverage => {
  const whole = airFitOf(machine, blueprint.plate.voltageV, set, { [explanation]: 1 })
  const fit: AirFit = { ...whole, hypotheses: whole.hypotheses?.filter(({ id }) => id === explanation) }
  const parameters = fit.parameters ?? []
  const predictor = makePredictor(fit, parameters, fit.readings)
  const { scaling } = fitHypothesis(fit, parameters, fit.hypotheses![0], predictor)
  const z = Array.from(scaling.sigma, () => random.normal())
  const shown = predictor.predict(logsAt(scaling, z))
  const readings = fit.readings.map((reading, i) => {
    const value = shown[i]?.value ?? 0
    return { ...reading, value: value + readingSigma(instrumentOf(fit, reading.instrument), value) * random.normal() }
  })
  const [answer] = explainAir({ ...fit, readings: readings }).explanations
  const told = answer.figures.map((figure, i) => ({ ...figure, truth: scaling.middle[i] + scaling.sigma[i] * z[i] }))
  const learned = told.filter((figure) => figure.learned >= learnedEnough)
  const holds = learned.filter(({ truth, value, low, high }) => {
    const spread = Math.log(high / low) / (2 * in95)
    return Math.abs(truth - Math.log(value)) <= inNinety * spread
  })
  return { figures: learned.length, held: holds.length }
}
