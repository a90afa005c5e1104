import type { GradedCheck } from '../../blueprint/schema.ts'

/** When a function is tried: what is opened first, then by hand on the closed machine, then running. */
export type FunctionGroup = 'opened' | 'by-hand' | 'run'

export type NamedPart = { readonly id: string; readonly name: string }

/** A function of one blueprint, with the check that stands for it. */
export type FunctionCheck = {
  readonly id: string
  readonly name: string
  readonly how: string
  readonly good: string
  readonly cautions: readonly string[]
  readonly minutes: number
  readonly group: FunctionGroup
  /** What it tries, the main part first; empty where the blueprint has no such part. */
  readonly parts: readonly NamedPart[]
  /** What it shows something of besides. */
  readonly touches: readonly string[]
  /** Ids of the controls that it works or sets. */
  readonly controls: readonly string[]
  /** The blueprint's own check, or one made for it with the outcomes good and bad, in this order. */
  readonly check: GradedCheck
  /** True where the blueprint has the check: its result is a reading. */
  readonly isReading: boolean
}

/** A part with a fault that no function touches, and why. */
export type NotCovered = { readonly part: NamedPart; readonly why: string }

/** What can be tried of a blueprint. */
export type FunctionsOf = { readonly functions: readonly FunctionCheck[]; readonly notCovered: readonly NotCovered[] }
