/** One contribution to an uncertainty. Its half-width or expanded value is in the unit of the reading. */
export type Contribution =
  | { readonly name: string; readonly distribution: 'rectangular'; readonly halfWidth: number }
  | {
      readonly name: string
      readonly distribution: 'normal'
      readonly expanded: number
      readonly coverageFactor: number
    }

export type BudgetLine = {
  readonly name: string
  readonly distribution: 'rectangular' | 'normal'
  /** Half-width of a rectangle, or the value at the coverage factor. */
  readonly limits: number
  readonly divisor: number
  readonly standardUncertainty: number
}

export type Uncertainty = {
  readonly budget: readonly BudgetLine[]
  readonly standard: number
  readonly coverageFactor: number
  /** U = k · u, about 95 %. */
  readonly expanded: number
}

/** About 95 % for a sum of several contributions. */
const coverageFactor = 2

/**
 * The combined and the expanded uncertainty of independent contributions, in the unit they are given in (GUM 4.3.7, 5.1.2, 6.2).
 * A rectangle's standard uncertainty is its half-width over √3.
 */
export const combineUncertainty = (contributions: readonly Contribution[]): Uncertainty => {
  const budget = contributions.map(budgetLine)
  const standard = Math.hypot(...budget.map((line) => line.standardUncertainty))
  return { budget, standard, coverageFactor, expanded: coverageFactor * standard }
}

const budgetLine = (contribution: Contribution): BudgetLine => {
  const { name, distribution } = contribution
  const [limits, divisor] =
    contribution.distribution === 'rectangular'
      ? [contribution.halfWidth, Math.sqrt(3)]
      : [contribution.expanded, contribution.coverageFactor]
  return { name, distribution, limits, divisor, standardUncertainty: limits / divisor }
}
