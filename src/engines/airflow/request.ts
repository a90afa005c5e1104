import { parse } from '../../base/parse.ts'
import type { Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { airPowerPeak, type AirPowerPeak } from './air-power.ts'
import { americanAirPower, type AmericanAirPower } from './american.ts'
import { beforeAfterRatio, type BeforeAfterRatio } from './before-after.ts'
import { roomAirOf } from './compile.ts'
import { standardSuctionPa } from './corrections.ts'
import type { RoomAir } from './density.ts'
import { explainAir, type AirExplanation } from './explain.ts'
import { airFitProblems } from './fit-problems.ts'
import { airFitSchema, type AirFit } from './fit-schema.ts'
import { meterRunFlow, type MeterRunFlow } from './meter-run.ts'
import { airNetworkProblems } from './network-problems.ts'
import { plateFlow, type PlateFlow } from './plate.ts'
import { namesProblems } from './request-problems.ts'
import { airflowRequestSchema, type AirflowRequest } from './request-schema.ts'
import { standardRoom } from './schema.ts'
import { solveAir, type AirSolution } from './solve.ts'

type Task = AirflowRequest['do']

/** A machine's curve: flow and power at each plate, and the largest air power. */
export type AirCurve = {
  readonly points: readonly (PlateFlow & { readonly plate: string; readonly suctionPa: number })[]
  readonly peak: AirPowerPeak
}

/** The curve as it was read, and as it would be in standard air, at nominal mains too where the voltage was given. */
export type AirPowerAnswer = AirCurve & { readonly standard: AirCurve & { readonly forMains: boolean } }

export type AirflowAnswer =
  | { readonly kind: 'density'; readonly answer: RoomAir }
  | { readonly kind: 'plate'; readonly answer: PlateFlow }
  | { readonly kind: 'meter-run'; readonly answer: MeterRunFlow }
  | { readonly kind: 'solve'; readonly answer: AirSolution }
  | { readonly kind: 'air-power'; readonly answer: AirPowerAnswer }
  | { readonly kind: 'american-air-power'; readonly answer: AmericanAirPower | null }
  | { readonly kind: 'explain'; readonly answer: AirExplanation }
  | { readonly kind: 'before-after'; readonly answer: BeforeAfterRatio }

/** Reads a fit from outside: the fit with everything filled in, or every problem it has. */
export const checkAirFit = (input: unknown): Result<AirFit> => {
  const parsed = parse(airFitSchema, input, 'air fit')
  if (parsed.kind === 'refused') return parsed
  const problems = airFitProblems(parsed.value)
  return problems.length > 0 ? refused(...problems) : parsed
}

/** Answers a request from outside. The answer is plain JSON; what is not of the form is refused with its problems. */
export const runAirflow = (input: unknown): Result<AirflowAnswer> => {
  const request = parse(airflowRequestSchema, input, 'airflow request')
  if (request.kind === 'refused') return request
  const task = request.value.do
  const problems = taskProblems(task)
  return problems.length > 0 ? refused(...problems) : ok(answerTo(task))
}

const taskProblems = (task: Task): readonly Problem[] => {
  switch (task.kind) {
    case 'solve':
      return airNetworkProblems(task.network)
    case 'explain':
      return airFitProblems(task)
    default:
      return namesProblems(task)
  }
}

const answerTo = (task: Task): AirflowAnswer => {
  switch (task.kind) {
    case 'density':
      return { kind: task.kind, answer: roomAirOf(task.air) }
    case 'plate':
      return { kind: task.kind, answer: plateFlow(task.plate, task.suctionPa, roomAirOf(task.air)) }
    case 'meter-run':
      return { kind: task.kind, answer: meterRunFlow(task) }
    case 'solve':
      return { kind: task.kind, answer: solveAir(task.network) }
    case 'air-power':
      return { kind: task.kind, answer: airPowerOf(task) }
    case 'american-air-power':
      return { kind: task.kind, answer: americanAirPower(task) }
    case 'explain':
      return { kind: task.kind, answer: explainAir(task) }
    case 'before-after':
      return { kind: task.kind, answer: beforeAfterRatio(task) }
  }
}

const airPowerOf = (task: Extract<Task, { kind: 'air-power' }>): AirPowerAnswer => {
  const around = roomAirOf(task.air)
  const curveIn = (air: RoomAir, suctionOf: (suctionPa: number) => number): AirCurve => {
    const points = task.readings.flatMap(({ plate: id, suctionPa: read }) => {
      const plate = task.plates.find((one) => one.id === id)
      const suctionPa = suctionOf(read)
      return plate === undefined ? [] : [{ plate: id, suctionPa, ...plateFlow(plate, suctionPa, air) }]
    })
    return { points, peak: airPowerPeak(points) }
  }
  const standard = curveIn(roomAirOf(standardRoom), (suctionPa) =>
    standardSuctionPa(suctionPa, around.densityKgPerM3, task.mainsRatio),
  )
  return { ...curveIn(around, (suctionPa) => suctionPa), standard: { ...standard, forMains: task.mainsRatio !== null } }
}
