import { strongEvidence } from '../../facts/air-faults.ts'
import { contradictions, type Unexplained } from './contradictions.ts'
import type { AirFit, AirHypothesis, AirParameter, HypothesisKind } from './fit-schema.ts'
import { fitHypothesis, type HypothesisFit } from './hypothesis-fit.ts'
import { nextReadings, type NextReading } from './next-reading.ts'
import { makePredictor } from './predict.ts'
import { sampleHypothesis, weightedQuantiles, type Sampled } from './sample.ts'
import { usualHypotheses, usualParameters } from './usual.ts'

/** A figure of the machine under an explanation: likeliest value (median when sampled) and 95 % limits. */
export type FittedFigure = {
  readonly id: string
  readonly name: string
  readonly unit: 'times' | 'mm2'
  readonly value: number
  readonly low: number
  readonly high: number
  /** Share of what was unknown about it before that the readings have told: 0 nothing, 1 all (of the variance of its logarithm). */
  readonly learned: number
}

/** One explanation after the readings. */
export type Explained = {
  readonly id: string
  readonly kind: HypothesisKind
  readonly name: string
  readonly probability: number
  readonly logEvidence: number
  readonly chiSquared: number
  /** False when the search for the likeliest machine did not come to rest: take its figures with care. */
  readonly settled: boolean
  readonly figures: readonly FittedFigure[]
  readonly readings: HypothesisFit['readings']
}

/** What the readings say of the machine. */
export type AirExplanation = {
  /** Likeliest first; ties in the order given. */
  readonly explanations: readonly Explained[]
  /** Readings that contradict the others, worst first. */
  readonly unexplained: readonly Unexplained[]
  /** Pairs of explanations, both of some weight, of which the readings favour neither by ten to one. */
  readonly notToldApart: readonly {
    readonly explanations: readonly [string, string]
    readonly evidenceRatio: number
    readonly text: string
  }[]
  /** Pairs of figures of which these readings tell only a product or a ratio. */
  readonly tied: readonly {
    readonly figures: readonly [string, string]
    readonly correlation: number
    readonly text: string
  }[]
  /** Figures the readings say next to nothing about. */
  readonly notSeen: readonly string[]
  /** What could be read next, the most telling between the two leading explanations first. */
  readonly next: readonly NextReading[]
  /** How the evidence was worked out, and the seed if it was sampled. */
  readonly evidence:
    { readonly kind: 'laplace' } | { readonly kind: 'sampled'; readonly seed: number; readonly draws: number }
}

const notLearned = 0.1
const strongCorrelation = 0.8
/** Explanations less likely than this are not worth telling apart. */
const someWeight = 0.05
/** 95 % of a normal distribution. */
const twoSided = 1.959964

/**
 * Explains gauge readings: fits the likeliest machine under each explanation and weighs them by Bayes. Each explanation is a prior over
 * the same figures. Throws when ids in it point at nothing; {@link checkAirFit} refuses that beforehand.
 */
export const explainAir = (fit: AirFit): AirExplanation => {
  const parameters = fit.parameters ?? usualParameters(fit)
  const hypotheses = fit.hypotheses ?? usualHypotheses(fit)
  const predictor = makePredictor(fit, parameters, fit.readings)
  const fits = hypotheses.map((hypothesis) => fitHypothesis(fit, parameters, hypothesis, predictor))
  const { sampling } = fit
  const sampled = sampling === null ? null : fits.map((one) => sampleHypothesis(fit, one, predictor, sampling))
  const probabilities = posterior(
    hypotheses,
    fits.map(({ logEvidence }, i) => sampled?.[i].logEvidence ?? logEvidence),
  )
  const leading = probabilities.indexOf(Math.max(...probabilities))
  const widest = widestOf(parameters, fits)
  const explanations = fits.map((one, i) => explained(one, probabilities[i], parameters, sampled?.[i] ?? null))
  explanations.sort((a, b) => b.probability - a.probability)
  return {
    explanations,
    unexplained: contradictions(fit, parameters, fits, [hypotheses[leading], widest.hypothesis]),
    notToldApart: notToldApart(explanations),
    ...identifiability(parameters, widest),
    next: nextReadings(fit, parameters, fits, probabilities),
    evidence: sampling === null ? { kind: 'laplace' } : { kind: 'sampled', ...sampling },
  }
}

const posterior = (hypotheses: readonly AirHypothesis[], logEvidence: readonly number[]): readonly number[] => {
  const logs = hypotheses.map(({ weight }, i) => Math.log(weight) + logEvidence[i])
  const most = Math.max(...logs)
  const raw = logs.map((value) => Math.exp(value - most))
  const total = raw.reduce((sum, value) => sum + value, 0)
  return raw.map((value) => value / total)
}

const explained = (
  fit: HypothesisFit,
  probability: number,
  parameters: readonly AirParameter[],
  sampled: Sampled | null,
): Explained => {
  const { hypothesis, scaling, z, covariance } = fit
  return {
    id: hypothesis.id,
    kind: hypothesis.kind,
    name: hypothesis.name,
    probability,
    logEvidence: sampled?.logEvidence ?? fit.logEvidence,
    chiSquared: fit.chiSquared,
    settled: fit.settled,
    figures: parameters.map(({ id, name, unit }, i) => {
      const spread = twoSided * Math.sqrt(covariance[i][i])
      const [low, middle, high] =
        sampled === null ? [z[i] - spread, z[i], z[i] + spread] : weightedQuantiles(sampled, i, [0.025, 0.5, 0.975])
      const at = (x: number): number => Math.exp(scaling.middle[i] + scaling.sigma[i] * x)
      return { id, name, unit, value: at(middle), low: at(low), high: at(high), learned: 1 - covariance[i][i] }
    }),
    readings: fit.readings,
  }
}

const notToldApart = (explanations: readonly Explained[]): AirExplanation['notToldApart'] => {
  const left = explanations.filter(({ probability }) => probability >= someWeight)
  return left.flatMap((a, i) =>
    left.slice(i + 1).flatMap((b) => {
      const evidenceRatio = Math.exp(a.logEvidence - b.logEvidence)
      if (evidenceRatio >= strongEvidence.ratio || evidenceRatio <= 1 / strongEvidence.ratio) return []
      const text = `These readings do not tell “${a.name}” from “${b.name}”`
      return [{ explanations: [a.id, b.id] as const, evidenceRatio, text }]
    }),
  )
}

/** The explanation with the widest priors, where a prior stands in for a reading least of all. */
const widestOf = (parameters: readonly AirParameter[], fits: readonly HypothesisFit[]): HypothesisFit => {
  const width = ({ scaling }: HypothesisFit): number =>
    parameters.reduce((sum, _, i) => sum + Math.log(scaling.sigma[i]), 0)
  return fits.reduce((a, b) => (width(b) > width(a) ? b : a))
}

/** Which figures the readings leave tied together, and which they do not see. */
const identifiability = (
  parameters: readonly AirParameter[],
  widest: HypothesisFit,
): Pick<AirExplanation, 'tied' | 'notSeen'> => {
  const { covariance } = widest
  const tied = parameters.flatMap((a, i) =>
    parameters.slice(i + 1).flatMap((b, k) => {
      const j = i + 1 + k
      const correlation = covariance[i][j] / Math.sqrt(covariance[i][i] * covariance[j][j])
      if (Math.abs(correlation) < strongCorrelation) return []
      const text = `These readings do not tell ${a.name} from ${b.name}`
      return [{ figures: [a.id, b.id] as const, correlation, text }]
    }),
  )
  const notSeen = parameters.filter((_, i) => 1 - covariance[i][i] < notLearned).map(({ id }) => id)
  return { tied, notSeen }
}
