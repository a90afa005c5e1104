/** The name that a mistyped one most likely means: at most a third of its letters away, or null. */
export const nearest = (name: string, known: readonly string[]): string | null => {
  const ranked = known.map((id) => ({ id, away: editDistance(name, id) })).sort((a, b) => a.away - b.away)
  const [best] = ranked
  return best !== undefined && best.away <= Math.max(2, name.length / 3) ? best.id : null
}

/** Levenshtein's distance: letters put in, taken out or changed. */
export const editDistance = (a: string, b: string): number => {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1)
      next.push(Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1))
    }
    row = next
  }
  return row[b.length] ?? 0
}
