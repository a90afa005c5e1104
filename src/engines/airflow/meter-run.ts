import { meterRunLimits, readerHarrisGallagher } from '../../facts/orifice.ts'
import { expansibility } from './discharge.ts'

/** Where the two pressures are taken: at the faces of the plate, 25.4 mm from them, or one diameter before and half behind. */
export type Taps = 'corner' | 'flange' | 'd-and-half-d'

const inchM = 0.0254

/** Distances of the taps from the plate in pipe diameters. */
const tapDistances = (taps: Taps, pipeM: number): readonly [number, number] => {
  switch (taps) {
    case 'corner':
      return [0, 0]
    case 'flange':
      return [inchM / pipeM, inchM / pipeM]
    case 'd-and-half-d':
      return [1, 0.47]
  }
}

/**
 * Discharge coefficient of a sharp plate between two lengths of pipe (Reader-Harris/Gallagher, ISO 5167-2:2003).
 * @param pipeReynolds from the pipe's diameter, at least 5,000
 */
export const meterRunDischarge = (pipeM: number, holeM: number, pipeReynolds: number, taps: Taps): number => {
  const rhg = readerHarrisGallagher
  const beta = holeM / pipeM
  const [before, behind] = tapDistances(taps, pipeM)
  const a = ((19_000 * beta) / pipeReynolds) ** 0.8
  const millionth = 1e6 / pipeReynolds
  const dam = (2 * behind) / (1 - beta)
  const { constant, fast, medium, perA } = rhg.upstream
  const upstream = constant + fast * Math.exp(-10 * before) - medium * Math.exp(-7 * before)
  const { limitM, factor, beta: smallBeta, from } = rhg.smallPipe
  const smallPipe = pipeM < limitM ? factor * (smallBeta - beta) * (from - pipeM / inchM) : 0
  return (
    rhg.base +
    rhg.beta2 * beta ** 2 -
    rhg.beta8 * beta ** 8 +
    rhg.reynolds * (millionth * beta) ** 0.7 +
    (rhg.small.constant + rhg.small.perA * a) * beta ** 3.5 * millionth ** 0.3 +
    (upstream * (1 - perA * a) * beta ** 4) / (1 - beta ** 4) -
    rhg.downstream.constant * (dam - rhg.downstream.factor * dam ** 1.1) * beta ** 1.3 +
    smallPipe
  )
}

export type MeterRun = {
  readonly pipeM: number
  readonly holeM: number
  readonly taps: Taps
  readonly upstreamPa: number
  readonly differentialPa: number
  readonly densityKgPerM3: number
  readonly viscosityPaS: number
  readonly kappa: number
}

/** Mass flow through a meter run, with what it rests on. `insideLimits` is false outside the range the formula was fitted for. */
export type MeterRunFlow = {
  readonly massKgPerS: number
  readonly discharge: number
  readonly expansibility: number
  readonly pipeReynolds: number
  readonly insideLimits: boolean
}

const rounds = 50

/** Mass flow through a plate with a real meter run; the coefficient depends on the flow, so it is found by repetition. */
export const meterRunFlow = (run: MeterRun): MeterRunFlow => {
  const { pipeM, holeM, taps, upstreamPa, differentialPa, densityKgPerM3, viscosityPaS, kappa } = run
  const beta = holeM / pipeM
  const epsilon = expansibility((upstreamPa - differentialPa) / upstreamPa, beta, kappa)
  const ideal =
    ((epsilon / Math.sqrt(1 - beta ** 4)) * Math.PI * holeM ** 2 * Math.sqrt(2 * densityKgPerM3 * differentialPa)) / 4
  const reynoldsOf = (massKgPerS: number): number => (4 * massKgPerS) / (Math.PI * pipeM * viscosityPaS)
  let discharge: number = readerHarrisGallagher.base
  for (let round = 0; round < rounds; round++) {
    const next = meterRunDischarge(pipeM, holeM, reynoldsOf(discharge * ideal), taps)
    const settled = Math.abs(next - discharge) < 1e-15
    discharge = next
    if (settled) break
  }
  const pipeReynolds = reynoldsOf(discharge * ideal)
  return {
    massKgPerS: discharge * ideal,
    discharge,
    expansibility: epsilon,
    pipeReynolds,
    insideLimits: isInside(run, pipeReynolds),
  }
}

const isInside = ({ pipeM, holeM }: MeterRun, pipeReynolds: number): boolean => {
  const { smallestHoleM, pipeM: pipes, beta, lowestReynolds } = meterRunLimits
  const ratio = holeM / pipeM
  return (
    holeM >= smallestHoleM &&
    pipeM >= pipes[0] &&
    pipeM <= pipes[1] &&
    ratio >= beta[0] &&
    ratio <= beta[1] &&
    pipeReynolds >= lowestReynolds
  )
}
