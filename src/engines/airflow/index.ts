/** Air: density, holes, networks of fans, losses and leaks, air power, and what gauge readings say of a machine. */
export { airPowerPeak, airPowerW, type AirPoint, type AirPowerPeak } from './air-power.ts'
export {
  americanAirPower,
  americanDensityRatio,
  americanPlateCoefficient,
  americanWatts,
  type AmericanAirPower,
  type AmericanReading,
} from './american.ts'
export {
  beforeAfterRatio,
  type AirSession,
  type BeforeAfter,
  type BeforeAfterRatio,
  type PlateRatio,
  type PlateReading,
  type Ratio,
} from './before-after.ts'
export type { Unexplained } from './contradictions.ts'
export { room, roomAirOf } from './compile.ts'
export { atStandardDensity, fanLaws, motorScaling, standardSuctionPa, type MotorScaling } from './corrections.ts'
export { airDensityKgPerM3, airOfRoom, airViscosityPaS, type Room, type RoomAir } from './density.ts'
export { expansibility, freeDischarge, olderExpansibility, roundedDischarge, thickDischarge } from './discharge.ts'
export { explainAir, type AirExplanation, type Explained, type FittedFigure } from './explain.ts'
export {
  airFitSchema,
  type AirCandidate,
  type AirFit,
  type AirHypothesis,
  type AirParameter,
  type AirReading,
  type HypothesisKind,
  type Instrument,
} from './fit-schema.ts'
export { hoseLoss, mediumLoss, pipeFriction } from './losses.ts'
export { meterRunDischarge, meterRunFlow, type MeterRun, type MeterRunFlow, type Taps } from './meter-run.ts'
export { informationBits, type NextReading } from './next-reading.ts'
export {
  plainPlate,
  plateAreaM2,
  plateDischarge,
  plateFlow,
  plateUncertainty,
  type Plate,
  type PlateFlow,
} from './plate.ts'
export { checkAirFit, runAirflow, type AirflowAnswer, type AirCurve, type AirPowerAnswer } from './request.ts'
export { airflowRequestSchema, type AirflowRequest } from './request-schema.ts'
export { airNetworkSchema, type AirBranch, type AirNetwork, type AirSpec, type FanCurve } from './schema.ts'
export { solveAir, type AirSolution } from './solve.ts'
export { airPowerGrade, typicalFan, typicalHose, usualInstruments, type TypicalFan } from './typical.ts'
export { usualHypotheses, usualParameters } from './usual.ts'
