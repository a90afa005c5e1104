/** Sets of numbered things that are one and the same, kept as a forest in a typed array. */

/** Makes every item its own set. */
export const separate = (parent: Int32Array): void => {
  for (let i = 0; i < parent.length; i++) parent[i] = i
}

/** The item that stands for the whole set of `item`. Shortens the path on the way. */
const setOf = (parent: Int32Array, item: number): number => {
  let at = item
  while (parent[at] !== at) {
    parent[at] = parent[parent[at]]
    at = parent[at]
  }
  return at
}

/** Makes two sets one. False when they were one already. */
export const unite = (parent: Int32Array, a: number, b: number): boolean => {
  const rootA = setOf(parent, a)
  const rootB = setOf(parent, b)
  if (rootA === rootB) return false
  // The lower number stands for the set, so that the result does not depend on the order of joining.
  if (rootA < rootB) parent[rootB] = rootA
  else parent[rootA] = rootB
  return true
}

/** Makes every item point straight at the one that stands for its set. Afterwards `parent[item]` is the set of `item`. */
export const flatten = (parent: Int32Array): void => {
  // An item stands below all others of its set, so what it points at is settled before it is.
  for (let i = 0; i < parent.length; i++) parent[i] = parent[parent[i]]
}
