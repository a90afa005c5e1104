import type { Level } from './price-places.ts'

/** The middle of a distribution of prices, and the ends within which a half and nine tenths of it lie; whole minor units. */
export type PriceBand = {
  readonly medianMinor: number
  readonly half: readonly [number, number]
  readonly ninety: readonly [number, number]
}

/** What one comparable had to say. */
export type ComparableSay = {
  readonly id: string
  /** What it speaks for: the model itself, another of its kind, or the class. */
  readonly level: Level
  /** Its price as if in the condition and completeness asked about. */
  readonly likeMinor: number
  readonly ageDays: number
  /** What it counts for by age and origin, 0..1. */
  readonly timeShare: number
  /** What is left of that after it was held against the others, 0..1: low for a price that is far from its model. */
  readonly believedShare: number
  readonly weight: number
  readonly isOdd: boolean
}

export type PriceEstimate = {
  /** What one sale would bring. */
  readonly sale: PriceBand
  /** What such machines fetch in the middle: the part of the doubt that more sales would take away. */
  readonly typical: PriceBand
  /** High end over low end of nine in ten sales, as a factor up and down from the median. */
  readonly bandFactor: number
  /** Density of a sale, per minor unit, for drawing. */
  readonly density: readonly { readonly minor: number; readonly perMinor: number }[]
  readonly comparables: readonly ComparableSay[]
  readonly restsOn: readonly string[]
  readonly sources: readonly string[]
}
