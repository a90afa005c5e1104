/**
 * Classes of suspects that nothing can tell apart: same columns (outcome probabilities and exit payoffs), and each repair
 * takes them to the same class. Found by splitting classes until nothing splits any more (partition refinement), so the
 * merged problem has exactly the optimum of the whole one.
 *
 * @param columns numbers by suspect
 * @param after for each repair, for each suspect, the suspect left
 * @returns the class of each suspect; classes are numbered in the order of their first suspect
 */
export const indistinctClasses = (
  count: number,
  columns: readonly Float64Array[],
  after: readonly Int32Array[],
): Int32Array => {
  let classes = classesByColumns(count, columns)
  for (;;) {
    const split = classesByTargets(count, classes, after)
    if (classCount(split) === classCount(classes)) return classes
    classes = split
  }
}

export const classCount = (classes: Int32Array): number => classes.reduce((most, id) => Math.max(most, id + 1), 0)

const classesByColumns = (count: number, columns: readonly Float64Array[]): Int32Array => {
  const hash = new Int32Array(count)
  for (const column of columns) {
    const words = new Int32Array(column.buffer, column.byteOffset, column.length * 2)
    for (let i = 0; i < count; i++) hash[i] = mixed(hash[i], words[2 * i], words[2 * i + 1])
  }
  return grouped(hash, (a, b) => columns.every((column) => column[a] === column[b]))
}

const classesByTargets = (count: number, classes: Int32Array, after: readonly Int32Array[]): Int32Array => {
  const hash = Int32Array.from(classes)
  for (const row of after) for (let i = 0; i < count; i++) hash[i] = mixed(hash[i], classes[row[i]], 1)
  const same = (a: number, b: number): boolean =>
    classes[a] === classes[b] && after.every((row) => classes[row[a]] === classes[row[b]])
  return grouped(hash, same)
}

/** Numbers groups by an equivalence; the hash only saves comparisons, equal items must have equal hashes. */
const grouped = (hash: Int32Array, same: (a: number, b: number) => boolean): Int32Array => {
  const firsts = new Map<number, number[]>()
  const classes = new Int32Array(hash.length)
  let next = 0
  for (let i = 0; i < hash.length; i++) {
    const bucket = firsts.get(hash[i]) ?? []
    const first = bucket.find((candidate) => same(candidate, i))
    if (first === undefined) {
      firsts.set(hash[i], [...bucket, i])
      classes[i] = next++
    } else classes[i] = classes[first]
  }
  return classes
}

const mixed = (hash: number, low: number, high: number): number => {
  const first = Math.imul(hash ^ low, 0x9e3779b1)
  return Math.imul(first ^ (first >>> 15) ^ high, 0x85ebca6b)
}
