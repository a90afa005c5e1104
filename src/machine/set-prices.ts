/** A price that somebody set for one machine, minor units, and when, ISO 8601. */
export type SetPrice = { readonly minor: number; readonly at: string }

/** The prices set for a machine. Null: the blueprint's holds. Parts by their id; those not named go by the blueprint. */
export type SetPrices = {
  readonly working: SetPrice | null
  readonly spares: SetPrice | null
  readonly parts: Readonly<Record<string, SetPrice>>
}
