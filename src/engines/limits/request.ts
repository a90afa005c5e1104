import { parse } from '../../base/parse.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import type { Region } from '../../facts/regions.ts'
import type { SafetyProfile } from '../../facts/safety-limits.ts'
import { cableVerdict, type CableVerdict } from './cable.ts'
import { capacitorCurrentA, largestBleedOhm } from './capacitors.ts'
import { leadResistance, type LeadResistance } from './conductor.ts'
import { expectedEarth, type ExpectedEarth } from './expected-earth.ts'
import { fuseTime, fuseTimeSources, type FuseTime } from './fuse-time.ts'
import { judgeReading } from './judge.ts'
import type { JudgedLimit, Judgement } from './judgement.ts'
import { chooseLead, type LeadChoice } from './lead-choice.ts'
import { judgedLimit, limitFor, profileNamed, profilesOf } from './profiles.ts'
import { ratedOf } from './rated-current.ts'
import { requestProblems } from './request-problems.ts'
import { limitsRequestSchema, type LimitsRequest } from './request-schema.ts'
import { seizedMotor, type SeizedMotor } from './seized.ts'
import { stepsFor, type SafetyStep } from './steps.ts'
import { safetyVerdict, type SafetyVerdict } from './verdict.ts'

type Task = LimitsRequest['do']

export type LimitsAnswer =
  | { readonly kind: 'profiles'; readonly answer: readonly SafetyProfile[] }
  | { readonly kind: 'steps'; readonly answer: readonly SafetyStep[] }
  | { readonly kind: 'judge'; readonly answer: Judgement }
  | { readonly kind: 'verdict'; readonly answer: SafetyVerdict }
  | { readonly kind: 'expected-earth'; readonly answer: ExpectedEarth }
  | { readonly kind: 'conductor'; readonly answer: LeadResistance }
  | { readonly kind: 'cable'; readonly answer: CableVerdict }
  | { readonly kind: 'lead'; readonly answer: LeadChoice }
  | { readonly kind: 'fuse'; readonly answer: FuseTime & { readonly sources: typeof fuseTimeSources } }
  | { readonly kind: 'seized'; readonly answer: SeizedMotor }
  | { readonly kind: 'capacitor'; readonly answer: { readonly currentA: number; readonly largestBleedOhm: number } }

/** Answers a request from outside. The answer is plain JSON; what is not of the form, or does not go together, is refused with its problems. */
export const runLimits = (input: unknown): Result<LimitsAnswer> => {
  const request = parse(limitsRequestSchema, input, 'limits request')
  if (request.kind === 'refused') return request
  const task = request.value.do
  const problems = requestProblems(task)
  return problems.length > 0 ? refused(...problems) : ok(answerTo(task))
}

const answerTo = (task: Task): LimitsAnswer => {
  switch (task.kind) {
    case 'profiles':
      return { kind: task.kind, answer: profilesOf(task.region) }
    case 'steps':
      return {
        kind: task.kind,
        answer: stepsFor(known(profileNamed(task.profile)), task.region, task.machine, task.lead),
      }
    case 'judge':
      return { kind: task.kind, answer: judgeReading(task.quantity, task.reading, task.instrument, limitOf(task)) }
    case 'verdict':
      return { kind: task.kind, answer: safetyVerdict({ ...task, profile: known(profileNamed(task.profile)) }) }
    case 'expected-earth':
      return { kind: task.kind, answer: expectedEarth(known(profileNamed(task.profile)), task.lead, task.hasReel) }
    case 'conductor': {
      const { size, lengthM, conductors, temperatureC, isTinned } = task
      return { kind: task.kind, answer: leadResistance(size, lengthM, conductors, temperatureC, isTinned) }
    }
    case 'cable':
      return { kind: task.kind, answer: cableVerdict(task) }
    case 'lead':
      return { kind: task.kind, answer: known(chooseLead(task.plate, task.region, task.lengthM, task.cables)) }
    case 'fuse':
      return {
        kind: task.kind,
        answer: { ...known(fuseTime(task.ratingA, task.currentA)), sources: fuseTimeSources },
      }
    case 'seized':
      return { kind: task.kind, answer: known(seizedMotor(ratedOf(task.plate).currentA, task.fuseA)) }
    case 'capacitor': {
      const currentA = capacitorCurrentA(task.capacitanceF, task.voltageV, task.frequencyHz)
      return {
        kind: task.kind,
        answer: { currentA, largestBleedOhm: largestBleedOhm(task.capacitanceF, task.voltageV) },
      }
    }
  }
}

const limitOf = ({ limit, quantity }: Extract<Task, { kind: 'judge' }>): JudgedLimit => {
  if (limit.kind === 'given') {
    const { kind: _, ...given } = limit
    return { ...given, linear: null }
  }
  const found = limitFor(known(profileNamed(limit.profile)), quantity, limit.machine, limit.lead)
  return known(judgedLimit(known(found)) ?? undefined)
}

/** The problems of a request were looked for before: what is missing here is a programmer's mistake. */
const known = <T>(value: T | undefined): T => {
  if (value === undefined) throw new Error('A request was answered before its problems were looked for')
  return value
}

/** The profile that a region takes unless another is asked for. */
export const usualProfile = (region: Region): SafetyProfile => known(profilesOf(region)[0])
