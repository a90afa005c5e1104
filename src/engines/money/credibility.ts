/** What was seen of one group: how many, their sum, and the sum of their squares. */
export type GroupSeen = { readonly count: number; readonly sum: number; readonly squares: number }

/** What one more of a group would bring, as far as can be said from this group and the others. */
export type Credible = {
  /** Mean of the group alone. */
  readonly mean: number
  /** Weight of the group's own mean, 0 to 1; the rest goes to the mean of all. */
  readonly weight: number
  /** The mean drawn towards that of all groups. */
  readonly likely: number
}

/**
 * Means of groups, those of few members drawn towards the mean of all: the Bühlmann–Straub estimate with its parameters taken
 * from the data (Klugman, Panjer and Willmot, Loss Models, non-parametric empirical Bayes estimation; from memory). Each member
 * counts as one. Where the groups lie no further apart than chance explains, all of them are given the mean of all; so too
 * where no group has two members, since then nothing is known of chance.
 * @returns one answer a group, in order; groups without members are given the mean of all, 0 where there is none
 */
export const credibleMeans = (groups: readonly GroupSeen[]): readonly Credible[] => {
  const seen = groups.filter(({ count }) => count > 0)
  const total = seen.reduce((sum, { count }) => sum + count, 0)
  const overall = total === 0 ? 0 : seen.reduce((sum, group) => sum + group.sum, 0) / total
  const ratio = ratioOf(seen, total, overall)
  const weights = groups.map(({ count }) => (count === 0 ? 0 : ratio === null ? 0 : count / (count + ratio)))
  const complement = weightedMean(groups, weights) ?? overall
  return groups.map((group, i) => {
    const weight = weights[i] ?? 0
    const mean = group.count === 0 ? complement : group.sum / group.count
    return { mean, weight, likely: weight * mean + (1 - weight) * complement }
  })
}

/** Variance within groups over variance between them; null where the latter is nought or not known. */
const ratioOf = (seen: readonly GroupSeen[], total: number, overall: number): number | null => {
  const freedom = total - seen.length
  if (freedom <= 0 || seen.length < 2) return null
  const within = seen.reduce((sum, one) => sum + Math.max(0, one.squares - one.sum ** 2 / one.count), 0) / freedom
  const apart = seen.reduce((sum, one) => sum + one.count * (one.sum / one.count - overall) ** 2, 0)
  const spread = total - seen.reduce((sum, { count }) => sum + count ** 2, 0) / total
  const between = (apart - within * (seen.length - 1)) / spread
  return between > 0 ? within / between : null
}

const weightedMean = (groups: readonly GroupSeen[], weights: readonly number[]): number | null => {
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  if (all === 0) return null
  const own = groups.reduce(
    (sum, { count, sum: of }, i) => sum + (count === 0 ? 0 : (weights[i] ?? 0) * (of / count)),
    0,
  )
  return own / all
}
