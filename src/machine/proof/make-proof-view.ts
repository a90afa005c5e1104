import { inSentence } from '../../base/in-sentence.ts'
import { sourceText } from '../../base/source-text.ts'
import { recallCheckId } from '../../facts/recall-check.ts'
import { regionNames, regions, type Region } from '../../facts/regions.ts'
import { localRulesDecide, secondHandDuties } from '../../facts/second-hand-duties.ts'
import { safetySteps, type SafetyStepId } from '../../facts/safety-steps.ts'
import { testInstruments } from '../../facts/test-instruments.ts'
import {
  amountText,
  judgedLimit,
  judgeReading,
  limitFor,
  plugFuseA,
  profilesOf,
  quantityNames,
  ratedOf,
  seizedMotor,
  stepQuantities,
  stepsFor,
  unitOf,
  type Judgement,
  type SafetyCase,
  type SafetyStep,
  type SafetyVerdict,
} from '../../engines/limits/index.ts'
import type { Job } from '../job.ts'
import type { Finding } from './finding.ts'
import { findingsOf, leadOf, proofCase, readingOf, usualRules, verdictBy, type Standing } from './proof-case.ts'
import { leadText, shownText } from './proof-text.ts'
import type { FindingView, ProofStepView, ProofView, RegionChoice } from './proof-view.ts'
import { recallView } from './recall.ts'

const titles = {
  fit: 'Fit to sell',
  'not-fit': 'Not fit to sell',
  'not-proven': 'Not proven',
} as const

const stateTexts: Readonly<Record<ProofStepView['state'], string>> = {
  passed: 'passed',
  failed: 'failed',
  'not-proven': 'not proven',
  'not-done': 'not done',
  'not-applicable': 'does not apply',
}

/**
 * Is it safe to sell? What the checks after repair prove, by the rules noted for the machine, else those of the region given.
 * Pure: the same job gives the same view.
 */
export const proofView = (job: Job, usualRegion: Region): ProofView => {
  const rules = job.rules ?? usualRules(usualRegion)
  const given = proofCase(job, rules)
  const verdict = verdictBy(job, rules)
  const { standing, voided, voidedBy } = findingsOf(job)
  const lead = leadOf(job)
  const steps = stepsFor(given.profile, given.region, given.machine, given.lead)
  return {
    rules: {
      ...rules,
      regionName: regionNames[rules.region],
      name: given.profile.name,
      edition: given.profile.edition,
      isNoted: job.rules !== undefined && job.rules !== null,
    },
    choices: regions.map(regionChoice),
    machine: machineText(given),
    lead:
      lead === null ? null : { ...lead, text: leadText(lead), isNoted: job.lead !== undefined && job.lead !== null },
    verdict: {
      kind: verdict.kind,
      title: titles[verdict.kind],
      sentence: verdict.sentence,
      toProve: verdict.toProve.map((one) => ({ ...one, instruments: one.instruments.map(instrumentName) })),
    },
    decisionRule: verdict.decisionRule,
    recall: recallView(job, rules.region),
    duties: dutiesOf(rules.region),
    steps: steps.map((step) => stepView(step, verdict, given, standing)),
    voided: voided.length === 0 ? null : { note: voidedBy, findings: voided.map((one) => findingView(one, given)) },
    instruments: testInstruments.map(({ id, name, functions }) => ({
      id,
      name,
      measures: [...new Set(functions.map(({ measures }) => measures))],
    })),
    seized: seizedText(job, rules.region),
  }
}

const regionChoice = (region: Region): RegionChoice => ({
  region,
  name: regionNames[region],
  profiles: profilesOf(region).map(({ id, name, edition }) => ({ id, name, edition })),
})

const dutiesOf = (region: Region): ProofView['duties'] => {
  const { law, sentences, sources, recall } = secondHandDuties[region]
  return {
    regionName: regionNames[region],
    law,
    sentences: [...sentences, localRulesDecide],
    sources: [...new Set([...sources, recall.source].map(sourceText))],
  }
}

const instrumentName = (id: string): string => testInstruments.find((one) => one.id === id)?.name ?? id

const machineText = ({ machine }: SafetyCase): readonly string[] => [
  machine.class === 'I'
    ? 'Class I by its plate: metal that can be touched is joined to the earth pin.'
    : 'Class II by its plate: double insulated, no earth.',
  ...(machine.hasElectronicSwitch
    ? ['An electronic control stands before the motor: a test with the plug out does not reach it.']
    : []),
]

const stepView = (
  step: SafetyStep,
  verdict: SafetyVerdict,
  given: SafetyCase,
  standing: readonly Standing[],
): ProofStepView => {
  const { id, title, asked, why, plugOut, how, cautions } = step
  const state = verdict.steps.find((one) => one.id === id)?.state ?? 'not-done'
  return {
    id,
    title,
    asked,
    why,
    state,
    stateText: stateTexts[state],
    plugOut,
    how,
    cautions,
    limits: step.limits.map(({ limit, value, testVoltageV }) => ({
      quantity: limit.quantity,
      name: quantityNames[limit.quantity],
      text: value === null ? null : limitText(limit.sense, value.value, unitOf(limit.quantity)),
      because: value?.because ?? null,
      unit: unitOf(limit.quantity),
      testVoltageV,
    })),
    provenBy: step.provenBy.map(instrumentName),
    findings: standing.filter(({ finding }) => stepOf(finding) === id).map((one) => findingView(one, given)),
    sources: [...new Set(step.sources.map(sourceText))],
  }
}

const limitText = (sense: 'at-most' | 'at-least', value: number, unit: 'ohm' | 'ampere' | 'volt'): string =>
  `${sense === 'at-most' ? 'at most' : 'at least'} ${amountText(value, unit)}`

const stepOf = (finding: Finding): SafetyStepId | undefined =>
  finding.kind === 'look'
    ? finding.step === recallCheckId
      ? undefined
      : finding.step
    : safetySteps.find(({ id }) => stepQuantities[id].includes(finding.quantity))?.id

const findingView = ({ note, finding }: Standing, given: SafetyCase): FindingView => {
  if (finding.kind === 'look') {
    const title = safetySteps.find(({ id }) => id === finding.step)?.title ?? finding.step
    const seen = finding.good ? 'good' : 'not good'
    return {
      note,
      step: stepOf(finding) ?? null,
      where: finding.text === '' ? inSentence(title) : finding.text,
      read: seen,
      limit: '',
      uncertainty: '',
      instrument: note === null ? 'a check on the bench' : 'by eye and hand',
      checkedOn: '',
      kind: finding.good ? 'pass' : 'fail',
      sentence: finding.good ? `${title}: nothing found.` : `${title}: something was found.`,
    }
  }
  const { reading, instrument } = readingOf(finding)
  const limit = limitFor(given.profile, finding.quantity, given.machine, given.lead)
  const judged = limit === undefined ? null : judgedLimit(limit)
  const shared = {
    note,
    step: stepOf(finding) ?? null,
    where: `${quantityNames[finding.quantity]} of ${finding.part}`,
    read: `${shownText(finding)}${finding.testVoltageV === null ? '' : ` at ${finding.testVoltageV} V`}`,
    instrument: instrument.name,
    checkedOn: finding.checkedOn,
  }
  if (judged === null) {
    const sentence = 'These rules have no limit for this reading, so it proves nothing here.'
    return { ...shared, limit: '', uncertainty: '', kind: 'not-provable', sentence }
  }
  const judgement = judgeReading(finding.quantity, reading, instrument, judged)
  return {
    ...shared,
    limit: limitText(judged.sense, judged.value, judgement.unit),
    uncertainty: uncertaintyText(judgement),
    kind: judgement.kind,
    sentence: judgement.sentence,
  }
}

const uncertaintyText = ({ uncertainty, unit }: Judgement): string =>
  uncertainty === null || !Number.isFinite(uncertainty.expanded)
    ? ''
    : `${amountText(uncertainty.expanded, unit)} (k = ${uncertainty.coverageFactor})`

/** British plugs have a fuse; what it does for a motor held still. */
const seizedText = ({ plate }: Job, region: Region): string | null => {
  if (region !== 'UK') return null
  const { voltageV, powerW, protectionClass, massKg } = plate
  const rated = ratedOf({ voltageV, powerW, currentA: null, class: protectionClass, massKg: massKg ?? null })
  return seizedMotor(rated.currentA, plugFuseA(powerW))?.sentence ?? null
}
