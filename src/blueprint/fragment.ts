import type { CatalogueRowId, Family } from '../facts/fault-catalogue.ts'
import type { Wording } from './reword.ts'
import type { BlueprintInput } from './schema.ts'

type PartInput = BlueprintInput['parts'][number]
type PointInput = BlueprintInput['points'][number]
type FaultInput = BlueprintInput['faults'][number]
export type CheckInput = BlueprintInput['checks'][number]
export type Under = Extract<CheckInput, { under: unknown }>['under']

/** A part whose worth as a spare is a share of what the working machine fetches. */
export type FragmentPart = Omit<PartInput, 'spareMinor'> & {
  readonly spareShare?: { readonly low: number; readonly high: number }
}

/** A point without its place on the drawing, which is the architecture's to say. */
export type FragmentPoint = Omit<PointInput, 'at'>

/** Rows of the failure catalogue and the share of each row's cases that are this fault. */
export type RowRate = {
  readonly rows: readonly (readonly [CatalogueRowId, number])[]
  /** The kind of machine whose column holds, where it is not the blueprint’s own. */
  readonly ratedAs?: Family | undefined
  readonly component?: FaultInput['rate']['component']
}
export type FragmentFault = Omit<FaultInput, 'rate'> & { readonly rate: RowRate | FaultInput['rate'] }

/**
 * A piece that several architectures share. What it names of other pieces (faults in `excludes`, `removes` and `under`)
 * is dropped where an architecture goes without. `addsTo`: what its faults show in checks that are written elsewhere.
 */
export type BlueprintFragment = {
  readonly points?: readonly FragmentPoint[]
  readonly parts?: readonly FragmentPart[]
  readonly controls?: readonly NonNullable<BlueprintInput['controls']>[number][]
  readonly circuit?: BlueprintInput['circuit']
  readonly covers?: readonly NonNullable<BlueprintInput['covers']>[number][]
  readonly faults?: readonly FragmentFault[]
  readonly checks?: readonly CheckInput[]
  readonly repairs?: BlueprintInput['repairs']
  readonly addsTo?: Readonly<Record<string, Under>>
}

/** What a blueprint says once: all but the lists that fragments fill. */
export type BlueprintBase = Omit<
  BlueprintInput,
  'points' | 'parts' | 'controls' | 'circuit' | 'covers' | 'faults' | 'checks' | 'repairs'
> & {
  /** Which column of the failure catalogue its rates come from. */
  readonly family: Family
  /** What is said otherwise where this machine is used. */
  readonly wording?: Wording
  /** Where each point lies on the drawing. */
  readonly places: Readonly<Record<string, readonly [number, number]>>
}
