import type { Blueprint } from '../../blueprint/schema.ts'
import type { PartKind } from '../../facts/part-kinds.ts'
import type { Region } from '../../facts/regions.ts'
import type { Plate } from '../plate.ts'
import type { ProvedLead } from '../proof/finding.ts'

/** What a spare is measured by, by the fields of its kind: a number in the field's unit, or words. */
export type Spec = Readonly<Record<string, number | string>>

/** A part that lies on the shelf, as far as it bears on what it fits. */
export type Spare = {
  readonly name: string
  readonly partKind: PartKind
  readonly spec: Spec
  readonly condition: 'tested' | 'looks-sound' | 'untested' | 'worn'
  /** What it was on the machine that it came off; null where it came from elsewhere. */
  readonly wasPart: string | null
}

/** The machine that a spare is wanted for. */
export type SpareWanted = {
  readonly blueprint: Blueprint
  readonly plate: Plate
  readonly region: Region
  readonly lead?: ProvedLead | null | undefined
  /** The model as it stands on the plate. */
  readonly model?: string | undefined
  /** What was measured on the old part; it goes before what the blueprint says. */
  readonly measured?: Spec | undefined
}

/** Whether a spare fits, and what that rests on. */
export type PartFit = {
  readonly kind: 'fits' | 'may-fit' | 'does-not-fit'
  /** Why not, each with both figures. */
  readonly reasons: readonly string[]
  /** What to find out first. */
  readonly unknown: readonly string[]
  /** How to use it. */
  readonly care: readonly string[]
  /** What was compared and agrees. */
  readonly agrees: readonly string[]
}

/** What came of comparing one thing; several make a fit. */
export type FitFinding = {
  readonly reason?: string
  readonly unknown?: string
  readonly care?: string
  readonly agrees?: string
}

/** One reason against it and it does not fit; something unknown, or nothing compared at all, and it may. */
export const fitOf = (findings: readonly FitFinding[]): PartFit => {
  const of = (key: keyof FitFinding): readonly string[] => findings.flatMap((finding) => finding[key] ?? [])
  const [reasons, unknown, agrees] = [of('reason'), of('unknown'), of('agrees')]
  const isKnown = unknown.length === 0 && agrees.length > 0
  const kind = reasons.length > 0 ? 'does-not-fit' : isKnown ? 'fits' : 'may-fit'
  return { kind, reasons, unknown, care: of('care'), agrees }
}
