/** What the order of covers is worked out from. */
type CoverOrder = { readonly id: string; readonly after: readonly string[] }

/**
 * The covers that must be off for the named ones to be off, each after those that come off before it.
 * @param covers without a cycle and without unknown names; `checkPlanProblem` sees to both
 */
export const openingOrder = (covers: readonly CoverOrder[], wanted: readonly string[]): readonly string[] => {
  const byId = new Map(covers.map((cover) => [cover.id, cover]))
  const order = new Set<string>()
  const visit = (id: string): void => {
    if (order.has(id)) return
    byId.get(id)?.after.forEach(visit)
    order.add(id)
  }
  wanted.forEach(visit)
  return [...order]
}

/** The order in which covers that are off go back: each before those it came off after. */
export const closingOrder = (covers: readonly CoverOrder[], off: readonly string[]): readonly string[] => {
  const isOff = new Set(off)
  return openingOrder(covers, off)
    .filter((id) => isOff.has(id))
    .reverse()
}

/** The covers of one cycle of `after`, in order; null when there is none. */
export const coverCycle = (covers: readonly CoverOrder[]): readonly string[] | null => {
  const byId = new Map(covers.map((cover) => [cover.id, cover]))
  const cleared = new Set<string>()
  const walk = (id: string, path: readonly string[]): readonly string[] | null => {
    if (path.includes(id)) return path.slice(path.indexOf(id))
    if (cleared.has(id)) return null
    for (const next of byId.get(id)?.after ?? []) {
      const found = walk(next, [...path, id])
      if (found !== null) return found
    }
    cleared.add(id)
    return null
  }
  for (const cover of covers) {
    const found = walk(cover.id, [])
    if (found !== null) return found
  }
  return null
}
