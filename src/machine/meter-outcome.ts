import type { Blueprint, MeterCheck } from '../blueprint/schema.ts'
import {
  ohmBandProbability,
  ohmDensity,
  ohmSlipDensity,
  openProbability,
  type MeterSpec,
  type PredictedOhm,
} from '../engines/belief/index.ts'
import { chargingProbability, isVisible } from './charging.ts'
import type { Mix } from './electrical-state.ts'
import type { MeterTable } from './meter-table.ts'
import type { ReadingResult } from './result.ts'

/**
 * How a reading that comes and goes shows itself. Judgement: bent at the right place it nearly always flickers,
 * left alone seldom; a poor touch of the probes makes any reading jump now and then.
 */
export const jumping = { whenMoved: 0.85, byChance: 0.06, onSound: 0.01 } as const

/** Shares of a slip of hand or eye: what gets written down when the reading is not what the meter saw. Judgement. */
const slipShare = { open: 0.33, charging: 0.02, jumps: 0.05, ohms: 0.6 } as const

/** Two predictions a person would see as different on the meter: this far apart on a logarithmic scale of 1 Ω and up. */
const visiblyApart = 0.4

/** What one suspect makes of one meter check: predictions by state, and the chance that the reading jumps. */
export type MeterPrediction = {
  readonly states: readonly MeterState[]
  readonly jumps: number
}

/** One state a suspect may be in at the moment of the reading. */
export type MeterState = {
  readonly predicted: PredictedOhm
  readonly share: number
  readonly state: number
  /** Probability that a climb to open is written down in place of a steady reading. */
  readonly charging: number
  /** A capacitor of visible size joins the probes, and nothing else does. */
  readonly showsCapacitor: boolean
}

/** The prediction of row `row` of the table for suspects with this mix of states. */
export const predictMeter = (blueprint: Blueprint, table: MeterTable, row: number, mix: Mix): MeterPrediction => {
  const states = mix.states.map(({ state, share }) => {
    const at = row * table.stateCount + state
    const predicted = { resistanceOhm: table.resistanceOhm[at], sdOhm: table.sdOhm[at] }
    const capacitanceF = table.capacitanceF[at]
    return {
      predicted,
      share,
      state,
      charging: chargingProbability(capacitanceF),
      showsCapacitor: isVisible(capacitanceF),
    }
  })
  return { states, jumps: jumpProbability(blueprint, table.checks[row], states, mix.faults) }
}

const jumpProbability = (
  blueprint: Blueprint,
  check: MeterCheck,
  states: readonly { readonly predicted: PredictedOhm }[],
  faults: readonly number[],
): number => {
  if (states.length < 2 || !differ(states.map((s) => s.predicted.resistanceOhm))) return jumping.onSound
  const isMoved = faults.some((index) => {
    const fault = blueprint.faults[index]
    return fault?.comesAndGoes !== undefined && check.moving.includes(fault.part)
  })
  return isMoved ? jumping.whenMoved : jumping.byChance
}

const differ = (resistances: readonly number[]): boolean => {
  const logs = resistances.map((r) => Math.log(r + 1))
  const finite = logs.filter(Number.isFinite)
  if (finite.length > 0 && finite.length < logs.length) return true
  return finite.length > 0 && Math.max(...finite) - Math.min(...finite) > visiblyApart
}

/** Probability (or, for a number, density) of a result under a prediction, slips left out. */
export const meterLikelihood = (spec: MeterSpec, prediction: MeterPrediction, result: ReadingResult): number => {
  switch (result.kind) {
    case 'jumps':
      return prediction.jumps
    case 'open':
      return steady(prediction, (predicted) => openProbability(spec, predicted))
    case 'charging':
      return chargingLikelihood(prediction)
    case 'ohms':
      return steady(prediction, (predicted) => ohmDensity(spec, predicted, result.resistanceOhm))
    case 'grade':
    case 'cannot-tell':
      return 1
  }
}

/** Probability that the reading is seen to climb and then go to open. */
export const chargingLikelihood = ({ states, jumps }: MeterPrediction): number => {
  let sum = 0
  for (const { share, charging } of states) sum += share * charging
  return sum * (1 - jumps)
}

/**
 * Probability of a reading in a band of ohms.
 * @param tellsCharging false where "rises, then open" counts as open and is no result of its own
 */
export const bandLikelihood = (
  spec: MeterSpec,
  prediction: MeterPrediction,
  lowOhm: number,
  highOhm: number,
  tellsCharging: boolean,
): number => steady(prediction, (predicted) => ohmBandProbability(spec, predicted, lowOhm, highOhm), tellsCharging)

/** Probability of a steady "open", as above. */
export const openLikelihood = (spec: MeterSpec, prediction: MeterPrediction, tellsCharging: boolean): number =>
  steady(prediction, (predicted) => openProbability(spec, predicted), tellsCharging)

const steady = (prediction: MeterPrediction, of: (predicted: PredictedOhm) => number, tellsCharging = true): number => {
  let sum = 0
  for (const { predicted, share, charging } of prediction.states)
    sum += share * of(predicted) * (tellsCharging ? 1 - charging : 1)
  return sum * (1 - prediction.jumps)
}

/** Likelihood of a result when it is a slip. */
export const meterSlipLikelihood = (spec: MeterSpec, result: ReadingResult): number => {
  switch (result.kind) {
    case 'jumps':
      return slipShare.jumps
    case 'open':
      return slipShare.open
    case 'charging':
      return slipShare.charging
    case 'ohms':
      return slipShare.ohms * ohmSlipDensity(spec)
    case 'grade':
    case 'cannot-tell':
      return 1
  }
}
