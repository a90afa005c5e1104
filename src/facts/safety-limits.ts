import type { Source } from '../base/source.ts'
import type { ApplianceClass, Region } from './regions.ts'

export type LimitQuantity =
  | 'earth-continuity'
  | 'insulation'
  | 'protective-conductor-current'
  | 'touch-current'
  | 'substitute-leakage'
  | 'plug-pin-voltage'

/**
 * How a limit comes about. Ohm, ampere, volt.
 * `with-cord`: an allowance and the resistance of the cord's own conductor, or `atLeast` if that is more.
 * `stepped`: so much up to a length, and more for each further length begun; thick conductors by area (length over conductivity
 * and area, and contacts), between a floor and the cap.
 */
export type LimitRule =
  | { readonly kind: 'fixed'; readonly value: number }
  | { readonly kind: 'with-cord'; readonly allowanceOhm: number; readonly atLeastOhm: number }
  | {
      readonly kind: 'stepped'
      readonly baseOhm: number
      readonly upToM: number
      readonly stepOhm: number
      readonly stepM: number
      readonly capOhm: number
      /** Thicker conductors than this go by area; null where the steps are for all. */
      readonly thick: {
        readonly aboveMm2: number
        readonly contactOhm: number
        readonly conductivityMPerOhmMm2: number
      } | null
    }

export type SafetyLimit = {
  readonly id: string
  readonly quantity: LimitQuantity
  readonly classes: readonly ApplianceClass[]
  /** Whether it is for machines carried about, for others, or for both (null). A vacuum cleaner is portable. */
  readonly portable: boolean | null
  readonly sense: 'at-most' | 'at-least'
  readonly rule: LimitRule
  /** DC volts that the method asks for; null where it asks for none. */
  readonly testVoltageV: number | null
  /** Least current through the conductor under test; null where no figure is known. */
  readonly leastTestCurrentA: number | null
  /** The document says that its figure already allows for the instrument. Then no guard band is taken. */
  readonly includesUncertainty: boolean
  readonly source: Source
}

/** Whether insulation and leakage are both asked for. */
export type InsulationRule = 'both' | 'either' | 'insulation-unless-unsuitable' | 'leakage-only'

export type SafetyProfile = {
  /** Never changes once published: a correction is a new version beside the old one. */
  readonly id: string
  readonly regions: readonly Region[]
  readonly name: string
  readonly edition: string
  readonly standing: 'after-repair' | 'in-service' | 'reference'
  readonly insulation: { readonly rule: InsulationRule; readonly source: Source }
  readonly notes: readonly { readonly text: string; readonly source: Source }[]
  readonly limits: readonly SafetyLimit[]
}
