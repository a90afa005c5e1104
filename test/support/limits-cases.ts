import { valueOf } from '../../src/base/result.ts'
import { runLimits, type LimitsAnswer, type SafetyVerdict } from '../../src/engines/limits/index.ts'
import type { ApplianceClass } from '../../src/facts/regions.ts'

export const ask = (task: unknown) => runLimits({ format: 'thrum-limits-1', do: task })

type Answers = { [A in LimitsAnswer as A['kind']]: A['answer'] }

/** The answer of one kind; a refusal or another kind is a mistake in the test. */
export const answerOf = <K extends LimitsAnswer['kind']>(kind: K, task: object): Answers[K] => {
  const answer = valueOf(ask({ kind, ...task }))
  if (answer.kind !== kind) throw new Error(`asked for ${kind}`)
  return answer.answer as Answers[K]
}

export const problemsOf = (task: unknown) => {
  const answer = ask(task)
  return answer.kind === 'refused' ? answer.problems : []
}

export const look = (step: string, good = true) => ({ kind: 'look', step, good })
export const reading = (quantity: string, value: number | string | null, instrument: unknown, more: object = {}) => ({
  kind: 'reading',
  quantity,
  reading: value === null ? { shown: 'above', value } : { value },
  instrument,
  ...more,
})

/** Findings of a sound machine, each measured with an instrument that can prove it under any profile. */
export const soundFindings = (appliance: ApplianceClass) => [
  look('visual'),
  ...(appliance === 'I' ? [reading('earth-continuity', 0.17, 'low-ohm-tester')] : []),
  reading('insulation', '50 MΩ', 'insulation-tester'),
  reading(appliance === 'I' ? 'protective-conductor-current' : 'touch-current', '0.1 mA', 'leakage-tester'),
  look('polarity'),
  look('run'),
]

export type VerdictCase = {
  readonly profile: string
  readonly region: string
  readonly appliance: ApplianceClass
  readonly machine?: object
  readonly acceptance?: 'guarded' | 'simple'
}

/** A machine with 6 m of 0.75 mm² or 18 AWG, 6 kg. */
export const verdictOf = (given: VerdictCase, findings: readonly unknown[]): SafetyVerdict => {
  const isAmerican = given.region === 'US' || given.region === 'CA'
  return answerOf('verdict', {
    profile: given.profile,
    region: given.region,
    machine: { class: given.appliance, massKg: 6, ...given.machine },
    lead: { lengthM: 6, size: isAmerican ? '18 AWG' : '0.75 mm2' },
    acceptance: given.acceptance ?? 'guarded',
    findings,
  })
}
