import type { PartKind } from '../../facts/part-kinds.ts'
import type { PartFit, Spare } from './spare.ts'

/** A part on the shelf that this machine may have: nobody else's, and priced in the machine's money. Money in minor units. */
export type ShelfPart = Spare & {
  readonly id: string
  readonly place: string
  /** What one of them stands at. */
  readonly costMinor: number
  /** What one would fetch, as somebody set it. */
  readonly fetchesMinor: number | null
}

/** A part on the shelf that fits, or may fit, as one of the machine's parts. Money in minor units. */
export type ShelfOffer = {
  readonly id: string
  readonly name: string
  readonly partKind: PartKind
  /** The blueprint's part that it could become. */
  readonly part: string
  readonly place: string
  readonly condition: Spare['condition']
  readonly fit: PartFit
  /** What it stands at; sunk, so the plan does not reckon with it. */
  readonly costMinor: number
  readonly fetchesMinor: number
  /** What it would net if it were sold instead, never below nothing: what using it up costs. */
  readonly worthMinor: number
}
