import type { $ZodChecks, $ZodTypes } from 'zod/v4/core'

/** What a schema of a number, text or list says of its size and form; undefined where it says nothing. */
export type Bounds = {
  readonly least?: number
  /** Whether the end itself is inside. */
  readonly withLeast?: boolean
  readonly most?: number
  readonly withMost?: boolean
  readonly isWhole?: boolean
  /** Such as `date`. */
  readonly format?: string
}

/** The bounds of a bare schema. */
export const boundsOf = ({ _zod: { def } }: $ZodTypes): Bounds => {
  const inside = (def.checks ?? []).flatMap((one) => boundsOfCheck((one as $ZodChecks)._zod.def))
  // A schema such as that of a day is a check at once.
  const own = 'check' in def ? boundsOfCheck(def as unknown as $ZodChecks['_zod']['def']) : []
  return [...own, ...inside].reduce(narrower, {})
}

const boundsOfCheck = (def: $ZodChecks['_zod']['def']): readonly Bounds[] => {
  switch (def.check) {
    case 'greater_than':
      return [{ least: Number(def.value), withLeast: def.inclusive }]
    case 'less_than':
      return [{ most: Number(def.value), withMost: def.inclusive }]
    case 'min_length':
      return [{ least: def.minimum, withLeast: true }]
    case 'max_length':
      return [{ most: def.maximum, withMost: true }]
    case 'number_format':
      return [{ isWhole: def.format.includes('int') }]
    case 'string_format':
      return [{ format: def.format }]
    default:
      return []
  }
}

/** Of two bounds of one end the one that leaves less. */
const narrower = (one: Bounds, other: Bounds): Bounds => ({
  ...one,
  ...other,
  ...(one.least !== undefined && one.least >= (other.least ?? -Infinity)
    ? { least: one.least, withLeast: one.withLeast }
    : {}),
  ...(one.most !== undefined && one.most <= (other.most ?? Infinity) ? { most: one.most, withMost: one.withMost } : {}),
})
