/** What the ohms kernel fills in. */
export type OhmsTable = {
  readonly pairs: number
  readonly elements: number
  /** For each pair: the resistance between its two nodes in Ω; Infinity when they are not joined, 0 when they are one. */
  readonly resistanceOhm: Float64Array
  /**
   * At `pair * elements + element`: ∂R/∂ln(R_element) in Ω, which is the power in the element at a test current of 1 A.
   * A row sums to the resistance of its pair; 0 for absent elements, ideal links and a pair that is not joined.
   */
  readonly share: Float64Array
}

/** An empty table for a number of pairs of a network with a number of elements. */
export const makeOhmsTable = (pairs: number, elements: number): OhmsTable => ({
  pairs,
  elements,
  resistanceOhm: new Float64Array(pairs),
  share: new Float64Array(pairs * elements),
})
