export { checkBeliefProblem } from './check-belief-problem.ts'
export { learnNaiveBayes, signsProblem, type Example, type NaiveBayes } from './naive-bayes.ts'
export {
  meterUncertaintyOhm,
  ohmBandProbability,
  ohmDensity,
  ohmSlipDensity,
  openProbability,
  sampleOhmReading,
  type MeterRange,
  type MeterSpec,
  type PredictedOhm,
  type SampledReading,
} from './ohm-reading.ts'
export { fitRate, type FittedRate, type RateGrounds } from './rate.ts'
export { runBelief, type BeliefAnswer } from './run-belief.ts'
export { beliefProblemSchema, type Belief, type BeliefEvent, type BeliefProblem } from './schema.ts'
export { betweenVariance, shrunkRatios, type Estimate, type ShrunkRatio } from './shrink.ts'
export { independentPrior, removedIndex, suspectSets } from './suspect-sets.ts'
export { updateBelief } from './update-belief.ts'
