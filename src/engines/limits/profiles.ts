import type { ApplianceClass, Region } from '../../facts/regions.ts'
import { insulationReach } from '../../facts/safety-steps.ts'
import type { LimitQuantity, SafetyLimit, SafetyProfile } from '../../facts/safety-limits.ts'
import { safetyProfiles } from '../../facts/safety-profiles.ts'
import type { JudgedLimit } from './judgement.ts'
import { limitValue, needsLead, type Lead, type LimitValue } from './limit-value.ts'

/** What of a machine decides which limits are for it. */
export type Machine = {
  readonly class: ApplianceClass
  readonly isPortable: boolean
  /** Switched on by electronics or a relay, so that a test with the plug out does not reach the motor. */
  readonly hasElectronicSwitch: boolean
  /** Surge suppressors between line or neutral and earth, which a test at 500 V would take for a fault. */
  readonly hasSurgeSuppressor: boolean
}

/** Profiles of a region, the one to take unless another is asked for first. Reference figures alone are not among them. */
export const profilesOf = (region: Region): readonly SafetyProfile[] =>
  safetyProfiles.filter((profile) => profile.regions.includes(region) && profile.standing !== 'reference')

/** The profile of that id, whatever its standing; undefined for one that is not known. */
export const profileNamed = (id: string): SafetyProfile | undefined =>
  safetyProfiles.find((profile) => profile.id === id)

/** A limit with its figure for one machine. The value is null where the lead has to be known first. */
export type MachineLimit = {
  readonly limit: SafetyLimit
  readonly value: LimitValue | null
  /** DC volts to test at: 250 instead of 500 with surge suppressors. */
  readonly testVoltageV: number | null
}

/** The limits of a profile that are for this machine. */
export const limitsFor = (profile: SafetyProfile, machine: Machine, lead: Lead | null): readonly MachineLimit[] =>
  profile.limits
    .filter((limit) => limit.classes.includes(machine.class))
    .filter((limit) => limit.portable === null || limit.portable === machine.isPortable)
    .map((limit) => ({
      limit,
      value: limitValue(limit, lead),
      testVoltageV:
        limit.testVoltageV !== null && machine.hasSurgeSuppressor
          ? insulationReach.suppressorTestV
          : limit.testVoltageV,
    }))

/** The limit for one quantity; undefined where the profile has none for this machine. */
export const limitFor = (
  profile: SafetyProfile,
  quantity: LimitQuantity,
  machine: Machine,
  lead: Lead | null,
): MachineLimit | undefined => limitsFor(profile, machine, lead).find(({ limit }) => limit.quantity === quantity)

/** A limit as it is judged against; null where its figure waits for the lead. */
export const judgedLimit = ({ limit, value, testVoltageV }: MachineLimit): JudgedLimit | null =>
  value === null
    ? null
    : {
        value: value.value,
        linear: value.linear,
        sense: limit.sense,
        testVoltageV,
        leastTestCurrentA: limit.leastTestCurrentA,
        includesUncertainty: limit.includesUncertainty,
      }

/** Whether some limit for this machine waits for the lead's length and size. */
export const waitsForLead = (profile: SafetyProfile, machine: Machine): boolean =>
  limitsFor(profile, machine, null).some(({ limit }) => needsLead(limit.rule))
