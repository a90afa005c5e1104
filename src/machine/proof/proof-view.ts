import type { Region } from '../../facts/regions.ts'
import type { SafetyStepId } from '../../facts/safety-steps.ts'
import type { LimitQuantity } from '../../facts/safety-limits.ts'
import type { LeadChoice } from '../../engines/limits/index.ts'
import type { ProvedLead } from './finding.ts'
import type { RecallView } from './recall.ts'

/** What the page, the command line and the API show of a machine's proof: worked out from its job, never stored. */
export type ProofView = {
  readonly rules: {
    readonly region: Region
    readonly regionName: string
    readonly profile: string
    readonly name: string
    readonly edition: string
    /** False while no note says by which rules: then those of the usual region are shown. */
    readonly isNoted: boolean
  }
  /** Editions that can be chosen, by region. */
  readonly choices: readonly RegionChoice[]
  /** What decides which checks are asked for, as sentences. */
  readonly machine: readonly string[]
  /** The lead of the machine, and whether a note or the blueprint says so; null where nothing does. */
  readonly lead: (ProvedLead & { readonly text: string; readonly isNoted: boolean }) | null
  readonly verdict: {
    readonly kind: 'fit' | 'not-fit' | 'not-proven'
    readonly title: string
    readonly sentence: string
    /** What is still to be proved, and names of instruments that could; empty when fit. */
    readonly toProve: readonly {
      readonly step: SafetyStepId
      readonly sentence: string
      readonly instruments: readonly string[]
    }[]
  }
  readonly decisionRule: string
  /** Whether the plate was looked up in the region's recall list. */
  readonly recall: RecallView
  /** What the region's law asks of who sells a used machine. */
  readonly duties: {
    readonly regionName: string
    readonly law: string
    /** Two sentences, and that local rules decide. */
    readonly sentences: readonly string[]
    readonly sources: readonly string[]
  }
  readonly steps: readonly ProofStepView[]
  /** What an opened cover or a repair has made void; null where nothing is. */
  readonly voided: { readonly note: string | null; readonly findings: readonly FindingView[] } | null
  readonly instruments: readonly InstrumentView[]
  /** What the plug's fuse does for a motor that cannot turn; null where there is no fuse. */
  readonly seized: string | null
}

export type RegionChoice = {
  readonly region: Region
  readonly name: string
  readonly profiles: readonly { readonly id: string; readonly name: string; readonly edition: string }[]
}

export type ProofStepView = {
  readonly id: SafetyStepId
  readonly title: string
  readonly asked: 'required' | 'optional' | 'not-applicable'
  readonly why: string | null
  readonly state: 'passed' | 'failed' | 'not-proven' | 'not-done' | 'not-applicable'
  /** The state in words. */
  readonly stateText: string
  readonly plugOut: boolean
  readonly how: readonly string[]
  readonly cautions: readonly string[]
  readonly limits: readonly {
    readonly quantity: LimitQuantity
    readonly name: string
    /** `at most 0.308 Ω`; null where the lead has to be known first. */
    readonly text: string | null
    readonly because: string | null
    readonly unit: 'ohm' | 'ampere' | 'volt'
    readonly testVoltageV: number | null
  }[]
  /** Names of known instruments that could prove it. */
  readonly provenBy: readonly string[]
  readonly findings: readonly FindingView[]
  readonly sources: readonly string[]
}

/** One finding with what it comes to. */
export type FindingView = {
  /** Null for a run that the bench's own checks show. */
  readonly note: string | null
  /** The check it belongs to; null where these rules know none for it. */
  readonly step: SafetyStepId | null
  readonly where: string
  readonly read: string
  readonly limit: string
  /** `0.031 Ω (k = 2)`; empty where there is none. */
  readonly uncertainty: string
  readonly instrument: string
  readonly checkedOn: string
  readonly kind: 'pass' | 'pass-within-uncertainty' | 'fail-within-uncertainty' | 'fail' | 'not-provable'
  readonly sentence: string
}

export type InstrumentView = { readonly id: string; readonly name: string; readonly measures: readonly string[] }

/** A replacement lead for the machine, as the limits engine chooses it. */
export type LeadView = LeadChoice
