import type { Source } from '../base/source.ts'
import type { Grade, ImprovementId } from './asking.ts'
import type { CleaningCautionId } from './cleaning-cautions.ts'

/** Which parts of a blueprint a task is done to, by id; `machine` is the whole of it. */
export type CleaningPlace =
  | 'machine'
  | {
      readonly parts: readonly string[]
      /** Not where the machine has this part. */
      readonly unless?: string
    }

/** What a task does to the price to ask. */
export type CleaningAdds =
  /** A part of an improvement; of the weights of all tasks that belong to the machine this is its share. */
  | { readonly kind: 'improvement'; readonly improvement: ImprovementId; readonly weight: number }
  /** Lifts the looks by a grade, from one of these. */
  | { readonly kind: 'grade'; readonly from: readonly Grade[] }
  /** Nothing that a buyer pays for by itself. */
  | { readonly kind: 'nothing' }

/** What dries, in words, and how many hours it takes: in a warm dry room, and in a cold or damp one. */
export type Drying = { readonly what: string; readonly warm: number; readonly damp: number }

/** One thing that can be cleaned or renewed before a machine is sold. */
export type CleaningTask = {
  readonly name: string
  /** As one says that it was done, within a sentence; left out where its name says it. */
  readonly done?: string
  readonly how: string
  readonly at: CleaningPlace
  readonly minutes: number
  /** Materials, in money of the United Kingdom, minor units. */
  readonly ukCostMinor: number
  readonly dries?: Drying
  /** Why it is done whatever it brings. `flat-belt`: only where the belt is flat. */
  readonly must?: { readonly why: string; readonly only?: 'flat-belt' }
  /** Only where this is found. */
  readonly when?: string
  /** Done in the place of another task: either ends both. */
  readonly insteadOf?: string
  readonly adds: CleaningAdds
  readonly cautions: readonly CleaningCautionId[]
  readonly source: Source
}
