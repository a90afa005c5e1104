import type { Region } from '../../facts/regions.ts'
import type { LimitQuantity, SafetyProfile } from '../../facts/safety-limits.ts'
import type { SafetyStepId } from '../../facts/safety-steps.ts'
import type { TestInstrument } from '../../facts/test-instruments.ts'
import { guardedRule } from './decision.ts'
import type { Reading } from './instrument-reading.ts'
import { judgeReading } from './judge.ts'
import type { Judgement } from './judgement.ts'
import type { Lead } from './limit-value.ts'
import { judgedLimit, type Machine } from './profiles.ts'
import { stepsFor, type SafetyStep } from './steps.ts'

/** What was found in one check: a look that was good or not, or a reading at one part of the machine. */
export type Finding =
  | { readonly kind: 'look'; readonly step: SafetyStepId; readonly good: boolean }
  | {
      readonly kind: 'reading'
      readonly quantity: LimitQuantity
      /** Where it was taken; readings at one part replace each other, parts do not. */
      readonly part: string
      readonly reading: Reading
      readonly instrument: Pick<TestInstrument, 'name' | 'functions'>
    }

/** Whether a reading on the right side of its limit, yet within the uncertainty, counts as passed. */
export type Acceptance = 'guarded' | 'simple'

export type StepState = 'passed' | 'failed' | 'not-proven' | 'not-done' | 'not-applicable'

export type JudgedStep = {
  readonly id: SafetyStepId
  readonly title: string
  readonly asked: SafetyStep['asked']
  readonly state: StepState
  readonly why: string | null
  readonly judgements: readonly { readonly part: string; readonly judgement: Judgement }[]
}

export type ToProve = {
  readonly step: SafetyStepId
  readonly sentence: string
  /** Known instruments that could; none where a look is what counts. */
  readonly instruments: readonly string[]
}

export type SafetyVerdict = {
  readonly kind: 'fit' | 'not-fit' | 'not-proven'
  readonly profile: string
  readonly profileName: string
  readonly edition: string
  readonly decisionRule: string
  readonly acceptance: Acceptance
  readonly steps: readonly JudgedStep[]
  readonly failed: readonly SafetyStepId[]
  readonly toProve: readonly ToProve[]
  readonly sentence: string
}

export type SafetyCase = {
  readonly profile: SafetyProfile
  readonly region: Region
  readonly machine: Machine & { readonly massKg: number | null }
  readonly lead: Lead | null
  readonly acceptance: Acceptance
  readonly findings: readonly Finding[]
}

/**
 * The verdict over a set of findings. Fit: all that the profile asks for is done and passed. Not fit: anything failed, asked for or
 * not. Else not proven, with what would prove it. What is not applicable counts for nothing.
 */
export const safetyVerdict = (given: SafetyCase): SafetyVerdict => {
  const { profile, acceptance } = given
  const steps = stepsFor(profile, given.region, given.machine, given.lead)
  const judged = steps.map((step) => judgeStep(step, given))
  const failed = judged.filter(({ state }) => state === 'failed').map(({ id }) => id)
  const toProve = whatToProve(steps, judged, profile)
  const kind = failed.length > 0 ? 'not-fit' : toProve.length > 0 ? 'not-proven' : 'fit'
  return {
    kind,
    profile: profile.id,
    profileName: profile.name,
    edition: profile.edition,
    decisionRule: guardedRule.id,
    acceptance,
    steps: judged,
    failed,
    toProve,
    sentence: sentenceOf(kind, judged, profile, toProve),
  }
}

const judgeStep = (step: SafetyStep, given: SafetyCase): JudgedStep => {
  const { id, title, asked, why } = step
  if (asked === 'not-applicable') return { id, title, asked, state: 'not-applicable', why, judgements: [] }
  const judgements = judgementsOf(step, given)
  const looks = given.findings.flatMap((one) => (one.kind === 'look' && one.step === id ? [one.good] : []))
  const states = [
    ...looks.map((good): StepState => (good ? 'passed' : 'failed')),
    ...judgements.map(({ judgement }) => stateOf(judgement, given)),
  ]
  return { id, title, asked, state: worst(states), why, judgements }
}

/** One judgement for each quantity and part: the worst of those that prove something, else of those that do not. */
const judgementsOf = (step: SafetyStep, given: SafetyCase): JudgedStep['judgements'] => {
  const all = given.findings.flatMap((finding) => {
    if (finding.kind !== 'reading') return []
    const own = step.limits.find(({ limit }) => limit.quantity === finding.quantity)
    const limit = own === undefined ? null : judgedLimit(own)
    if (limit === null) return []
    const { quantity, part, reading, instrument } = finding
    return [{ part, judgement: judgeReading(quantity, reading, instrument, limit) }]
  })
  return all.filter(
    ({ part, judgement }) =>
      judgement.kind !== 'not-provable' ||
      !all.some(
        (other) =>
          other.part === part &&
          other.judgement.quantity === judgement.quantity &&
          other.judgement.kind !== 'not-provable',
      ),
  )
}

const stateOf = (judgement: Judgement, { acceptance, machine }: SafetyCase): StepState => {
  // With the plug out nothing gets past an electronic switch.
  const reaches = judgement.quantity !== 'substitute-leakage' || !machine.hasElectronicSwitch
  switch (judgement.kind) {
    case 'pass':
      return reaches ? 'passed' : 'not-proven'
    case 'pass-within-uncertainty':
      return reaches && acceptance === 'simple' ? 'passed' : 'not-proven'
    case 'not-provable':
      return 'not-proven'
    case 'fail-within-uncertainty':
    case 'fail':
      return 'failed'
  }
}

const worst = (states: readonly StepState[]): StepState => {
  const order: readonly StepState[] = ['failed', 'not-proven', 'passed']
  return order.find((state) => states.includes(state)) ?? 'not-done'
}

/** What is still missing. Where insulation or leakage will do, one of the two. */
const whatToProve = (
  steps: readonly SafetyStep[],
  judged: readonly JudgedStep[],
  profile: SafetyProfile,
): readonly ToProve[] => {
  const stateNow = (id: SafetyStepId) => judged.find((one) => one.id === id)?.state
  const missing = steps
    .filter(({ id, asked }) => asked === 'required' && stateNow(id) !== 'passed' && stateNow(id) !== 'failed')
    .map((step) =>
      proofOf(
        step,
        judged.find(({ id }) => id === step.id),
      ),
    )
  const hasEither = profile.insulation.rule === 'either' && !steps.some(isLeakageRequired)
  if (!hasEither || stateNow('insulation') === 'passed' || stateNow('leakage') === 'passed') return missing
  const pair = steps.filter(({ id }) => id === 'insulation' || id === 'leakage')
  const sentence = 'Insulation or leakage: one of the two has to be measured and pass.'
  return [...missing, { step: 'insulation', sentence, instruments: pair.flatMap(({ provenBy }) => provenBy) }]
}

const isLeakageRequired = ({ id, asked }: SafetyStep): boolean => id === 'leakage' && asked === 'required'

const proofOf = (step: SafetyStep, judged: JudgedStep | undefined): ToProve => {
  const open = judged?.judgements.find(({ judgement }) => judgement.kind !== 'pass')
  const how = open === undefined ? 'has not been done.' : open.judgement.sentence
  return { step: step.id, sentence: `${step.title}: ${how}`, instruments: step.provenBy }
}

const sentenceOf = (
  kind: SafetyVerdict['kind'],
  judged: readonly JudgedStep[],
  profile: SafetyProfile,
  toProve: readonly ToProve[],
): string => {
  const by = `${profile.name} (${profile.edition})`
  const local = 'Local rules and a competent person decide.'
  switch (kind) {
    case 'fit':
      return `All that ${by} asks for was done and passed. ${local}`
    case 'not-fit': {
      const failed = judged.filter(({ state }) => state === 'failed').map(({ title }) => title.toLowerCase())
      return `Not fit to sell by ${by}: ${failed.join(', ')} failed. ${local}`
    }
    case 'not-proven':
      return `Not proved by ${by}. Still open: ${toProve.map(({ sentence }) => sentence).join(' ')} ${local}`
  }
}
