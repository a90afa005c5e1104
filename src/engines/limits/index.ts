/** Limits: a reading with its uncertainty against a limit, leads and fuses, and whether a set of checks proves a machine fit. */
export { amountText, quantityNames, unitOf, type Measurand, type UnitName } from './amount-text.ts'
export { cableVerdict, type CableVerdict, type MeasuredCable } from './cable.ts'
export { cableFit, type CableCondition, type CableFit, type LeadNeed, type ListedCable } from './cable-fit.ts'
export { capacitorCurrentA, largestBleedOhm } from './capacitors.ts'
export {
  copperFactor,
  copperRatio,
  leadResistance,
  ohmPerKmFromKft,
  seriesOhm,
  type LeadResistance,
} from './conductor.ts'
export { zoneOf, type DecisionRule, type Sense, type Zone } from './decision.ts'
export { expectedEarth, type ExpectedEarth } from './expected-earth.ts'
export { fuseTime, type FuseTime } from './fuse-time.ts'
export type { Reading } from './instrument-reading.ts'
export { judgeReading } from './judge.ts'
export type { JudgedLimit, Judgement, Unprovable } from './judgement.ts'
export { chooseLead, plugFuseA, type LeadChoice } from './lead-choice.ts'
export { limitValue, type Lead, type LimitValue } from './limit-value.ts'
export {
  judgedLimit,
  limitFor,
  limitsFor,
  profileNamed,
  profilesOf,
  type Machine,
  type MachineLimit,
} from './profiles.ts'
export { plateProblems, ratedOf, type Plate, type Rated } from './rated-current.ts'
export { runLimits, usualProfile, type LimitsAnswer } from './request.ts'
export { instrumentSchema } from './instrument-schema.ts'
export { limitQuantities } from './reading-schema.ts'
export { limitsRequestSchema, type LimitsRequest } from './request-schema.ts'
export { leadLength } from './schema.ts'
export { seizedMotor, standstillA, type SeizedMotor } from './seized.ts'
export { conductorSizes, sizeNamed, sizeText, type ConductorSize } from './sizes.ts'
export { applianceCordArea, smallestConductor } from './smallest-conductor.ts'
export { stepQuantities, stepsFor, type SafetyStep } from './steps.ts'
export { combineUncertainty, type BudgetLine, type Contribution, type Uncertainty } from './uncertainty.ts'
export {
  safetyVerdict,
  type Acceptance,
  type Finding,
  type SafetyCase,
  type SafetyVerdict,
  type ToProve,
} from './verdict.ts'
export { physicalDropV, tableDropV, voltageDrop, type VoltageDrop } from './voltage-drop.ts'
