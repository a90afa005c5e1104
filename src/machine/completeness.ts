import type { Blueprint } from '../blueprint/schema.ts'

/** Less than this share of what belongs to it is no machine for sale any more, whatever is missing. */
const leastShare = 0.5

/**
 * How much of a machine is there, as a share of what it fetches, 0.5 to 1: each part that is missing takes off what it fetches
 * as a spare, by the blueprint.
 * @param missing ids of parts; those that the blueprint does not know or price take nothing off
 */
export const completenessOf = (blueprint: Blueprint, missing: readonly string[]): number =>
  Math.max(
    leastShare,
    missing.reduce((left, id) => left - missingShare(blueprint, id), 1),
  )

/** What one part takes off when it is missing, as a share of what the machine fetches. */
export const missingShare = ({ parts, worth }: Blueprint, id: string): number => {
  const { spareMinor } = parts.find((part) => part.id === id) ?? {}
  const whole = worth.workingMinor.low + worth.workingMinor.high
  return spareMinor === undefined || whole === 0 ? 0 : Math.min(1, (spareMinor.low + spareMinor.high) / whole)
}
