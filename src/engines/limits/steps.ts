import type { Source } from '../../base/source.ts'
import { anchorage, anchoragePull } from '../../facts/cords.ts'
import { plugFuses } from '../../facts/fuses.ts'
import type { Region } from '../../facts/regions.ts'
import { wiring } from '../../facts/wiring.ts'
import type { InsulationRule, LimitQuantity, SafetyProfile } from '../../facts/safety-limits.ts'
import { insulationReach, safetySteps, type SafetyStepId, type SafetyStepText } from '../../facts/safety-steps.ts'
import { testInstruments } from '../../facts/test-instruments.ts'
import { amountText } from './amount-text.ts'
import { measuresFor } from './instrument-reading.ts'
import type { JudgedLimit } from './judgement.ts'
import type { Lead } from './limit-value.ts'
import { judgedLimit, limitsFor, type Machine, type MachineLimit } from './profiles.ts'
import { canPass, methodBar } from './provable.ts'

/** Whether a check is asked for. Not applicable is not a pass. */
export type Asked = 'required' | 'optional' | 'not-applicable'

export type SafetyStep = {
  readonly id: SafetyStepId
  readonly title: string
  readonly asked: Asked
  /** Why it is not applicable or not required, or what else stands in for it. */
  readonly why: string | null
  readonly plugOut: boolean
  readonly how: readonly string[]
  readonly cautions: readonly string[]
  readonly limits: readonly MachineLimit[]
  /** Ids of known instruments on which some reading would prove one of these limits; none where a look is what counts. */
  readonly provenBy: readonly string[]
  readonly sources: readonly Source[]
}

/** The quantities that a check may measure. */
export const stepQuantities: Readonly<Record<SafetyStepId, readonly LimitQuantity[]>> = {
  visual: [],
  'earth-continuity': ['earth-continuity'],
  insulation: ['insulation'],
  leakage: ['protective-conductor-current', 'touch-current', 'substitute-leakage'],
  polarity: [],
  run: [],
}

/** The checks after repair in their order, for a profile, a region and a machine. */
export const stepsFor = (
  profile: SafetyProfile,
  region: Region,
  machine: Machine & { readonly massKg: number | null },
  lead: Lead | null,
): readonly SafetyStep[] => {
  const limits = limitsFor(profile, machine, lead)
  return safetySteps.map((text) => {
    const own = limits.filter(({ limit }) => stepQuantities[text.id].includes(limit.quantity))
    const asked = askedFor(text.id, profile.insulation.rule, machine, own)
    return {
      id: text.id,
      title: text.title,
      ...asked,
      plugOut: text.plugOut,
      how: [...text.how, ...howHere(text.id, region, machine, own)],
      cautions: text.cautions,
      limits: own,
      provenBy: provers(own),
      sources: sourcesOf(text, profile, own),
    }
  })
}

const sourcesOf = (text: SafetyStepText, profile: SafetyProfile, own: readonly MachineLimit[]): readonly Source[] => [
  text.source,
  ...own.map(({ limit }) => limit.source),
  ...(text.id === 'insulation' || text.id === 'leakage' ? [profile.insulation.source] : []),
]

const required = { asked: 'required', why: null } as const

/** Class II has no earth to test; whether insulation or leakage are asked for is the profile's, and the switch's. */
const askedFor = (
  id: SafetyStepId,
  rule: InsulationRule,
  machine: Machine,
  own: readonly MachineLimit[],
): { readonly asked: Asked; readonly why: string | null } => {
  if (id === 'earth-continuity' && machine.class === 'II') {
    return { asked: 'not-applicable', why: 'Class II: double insulated, with no protective conductor to test' }
  }
  if (id === 'insulation') return insulationAsked(rule, machine, own)
  if (id === 'leakage') return leakageAsked(rule, machine)
  return required
}

const insulationAsked = (rule: InsulationRule, machine: Machine, own: readonly MachineLimit[]) => {
  if (own.length === 0) {
    return { asked: 'not-applicable', why: 'This profile asks for no insulation resistance, but for leakage' } as const
  }
  if (machine.hasElectronicSwitch && rule !== 'both') {
    return { asked: 'optional', why: 'The electronic switch keeps the test from the motor: leakage instead' } as const
  }
  if (rule === 'either') return { asked: 'optional', why: 'This or leakage' } as const
  return required
}

const leakageAsked = (rule: InsulationRule, machine: Machine) => {
  if (rule === 'insulation-unless-unsuitable' && !machine.hasElectronicSwitch) {
    return { asked: 'optional', why: 'Where the insulation test is unsuitable or in doubt' } as const
  }
  if (rule === 'either' && !machine.hasElectronicSwitch) {
    return { asked: 'optional', why: 'This or insulation' } as const
  }
  return required
}

const howHere = (
  id: SafetyStepId,
  region: Region,
  machine: Machine & { readonly massKg: number | null },
  own: readonly MachineLimit[],
): readonly string[] => {
  const { line, neutral, earth, old } = wiring[region]
  switch (id) {
    case 'visual':
      return [
        anchoragePullText(machine.massKg),
        `No core in colours of former times or of another region (${old}).`,
        ...fuseText(region),
      ]
    case 'insulation':
      return insulationText(machine, own)
    case 'polarity':
      return [
        `Line pin to the ${line.colour} core; neutral pin to the ${neutral.colour} core.`,
        ...(machine.class === 'I' ? [`Earth pin to the ${earth.colour} core and to the metal.`] : []),
        'The switch of the machine is in the line.',
      ]
    case 'earth-continuity':
    case 'leakage':
    case 'run':
      return []
  }
}

const anchoragePullText = (massKg: number | null): string => {
  const row = anchoragePull.find(({ upToKg }) => massKg !== null && (upToKg === null || massKg <= upToKg))
  const { pullN } = row ?? anchoragePull[anchoragePull.length - 1]
  return `Pull the lead at its entry with ${pullN} N (about ${Math.round(pullN / 9.81)} kg): it creeps no more than ${anchorage.mostCreepMm} mm.`
}

const fuseText = (region: Region): readonly string[] =>
  region === 'UK'
    ? [
        `Fuse in the plug: ${plugFuses.small.ratingA} A up to ${plugFuses.small.upToW} W, ${plugFuses.large.ratingA} A above, to BS 1362, no foil, no wire.`,
      ]
    : []

const insulationText = (machine: Machine, own: readonly MachineLimit[]): readonly string[] => {
  const [first] = own
  if (first === undefined || first.testVoltageV === null) return []
  const at = `Test at ${amountText(first.testVoltageV, 'volt')} DC.`
  const low = machine.hasSurgeSuppressor
    ? [`Not at 500 V: the surge suppressors would read as a fault (${insulationReach.surgeSuppressor.title}).`]
    : []
  const reach = machine.hasElectronicSwitch
    ? ['It reaches only as far as the electronic switch. The motor is proved by leakage.']
    : []
  return [at, ...low, ...reach]
}

/** Ids of known instruments on which some reading proves one of these limits. */
const provers = (own: readonly MachineLimit[]): readonly string[] =>
  testInstruments
    .filter((instrument) =>
      own.some((one) => {
        const limit = judgedLimit(one)
        return limit !== null && couldProve(instrument.functions, one.limit.quantity, limit)
      }),
    )
    .map(({ id }) => id)

/** Whether some reading on some function of an instrument would pass the limit. */
export const couldProve = (
  functions: (typeof testInstruments)[number]['functions'],
  quantity: LimitQuantity,
  limit: JudgedLimit,
): boolean =>
  functions.some(
    (used) =>
      used.measures === measuresFor(quantity) && methodBar(used, limit) === null && canPass(used, limit) === null,
  )
