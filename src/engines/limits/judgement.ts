import type { Measurand, UnitName } from './amount-text.ts'
import type { DecisionRule, Sense, Zone } from './decision.ts'
import type { Uncertainty } from './uncertainty.ts'

/** A limit for one machine, with all that decides whether an instrument can prove it. Ohm, ampere or volt. */
export type JudgedLimit = {
  readonly value: number
  /** A limit by steps read as a straight line instead; null where it does not go by steps. */
  readonly linear: number | null
  readonly sense: Sense
  readonly testVoltageV: number | null
  readonly leastTestCurrentA: number | null
  readonly includesUncertainty: boolean
}

/** Why an instrument proves nothing here. */
export type Unprovable =
  | { readonly kind: 'instrument-cannot-show' }
  | { readonly kind: 'test-voltage-too-low'; readonly hasV: number; readonly needsV: number }
  | { readonly kind: 'test-current-too-low'; readonly hasA: number; readonly needsA: number }
  | { readonly kind: 'out-of-range'; readonly maximum: number }
  | { readonly kind: 'uncertainty-greater-than-limit'; readonly expanded: number }

export type Judged = {
  readonly quantity: Measurand
  readonly unit: UnitName
  /** The reading with the leads taken off. */
  readonly value: number
  /** Whether the value is the reading, or the thing lies above or below it. */
  readonly shown: 'figure' | 'above' | 'below'
  readonly limit: JudgedLimit
  readonly instrument: string
  readonly rule: DecisionRule
  /** Null where the instrument does not measure this at all. */
  readonly uncertainty: Uncertainty | null
  readonly guardBand: number | null
  /** A reading on the right side of this one is a pass. */
  readonly acceptanceLimit: number | null
  /** On the right side of a limit by steps, and beyond the straight line that some read it as. */
  readonly isBeyondLinear: boolean
  readonly sentence: string
}

export type Judgement =
  ({ readonly kind: Zone } & Judged) | ({ readonly kind: 'not-provable'; readonly reason: Unprovable } & Judged)
