type Excluding = { readonly id: string; readonly excludes: readonly string[] }

/**
 * All sets of at most `most` compatible faults, as ascending fault indices: the empty set first ("nothing wrong"),
 * then single faults in order, then pairs in order. Two faults are compatible when neither excludes the other.
 * The sets are closed under removal of faults.
 */
export const suspectSets = (faults: readonly Excluding[], most: 0 | 1 | 2): readonly (readonly number[])[] => {
  const singles = most >= 1 ? faults.map((_, i) => [i]) : []
  const pairs = most >= 2 ? faults.flatMap((first, i) => partners(first, i, faults).map((j) => [i, j])) : []
  return [[], ...singles, ...pairs]
}

const partners = (first: Excluding, i: number, faults: readonly Excluding[]): readonly number[] =>
  faults.flatMap((second, j) => (j > i && areCompatible(first, second) ? [j] : []))

const areCompatible = (a: Excluding, b: Excluding): boolean => !a.excludes.includes(b.id) && !b.excludes.includes(a.id)

/**
 * Probability of each set when fault f is there with probability `rate[f]`, independently of the others, given that the
 * truth is one of the sets: Π r over the set × Π (1 − r) over the rest, made to sum to 1.
 * Throws when a rate is outside 0..1 or when no set holds all faults of rate 1.
 */
export const independentPrior = (sets: readonly (readonly number[])[], rate: Float64Array): Float64Array => {
  if (rate.some((r) => !(r >= 0 && r <= 1))) throw new Error('a fault rate is between 0 and 1')
  const certain = rate.reduce((count, r) => count + (r === 1 ? 1 : 0), 0)
  const weight = Float64Array.from(sets, (set) => oddsOf(set, rate, certain))
  const total = weight.reduce((a, b) => a + b, 0)
  if (total === 0) throw new Error('no set holds every fault that is certain')
  return weight.map((w) => w / total)
}

/** Π r / (1 − r): what is left when the factor common to all sets, Π (1 − r) over the uncertain faults, is divided out. */
const oddsOf = (set: readonly number[], rate: Float64Array, certain: number): number => {
  let odds = 1
  let certainHere = 0
  for (const fault of set) {
    const r = rate[fault]
    if (r === undefined) throw new Error(`fault ${fault} has no rate`)
    if (r === 1) certainHere += 1
    else odds *= r / (1 - r)
  }
  return certainHere === certain ? odds : 0
}

/** For each set, the index of the set that is left when these faults are gone. Throws when that set is not among them. */
export const removedIndex = (sets: readonly (readonly number[])[], removes: ReadonlySet<number>): number[] => {
  const index = new Map(sets.map((set, i) => [set.join(), i]))
  return sets.map((set) => {
    const left = set.filter((fault) => !removes.has(fault))
    const found = index.get(left.join())
    if (found === undefined) throw new Error(`the sets hold {${set.join()}} but not {${left.join()}}`)
    return found
  })
}
