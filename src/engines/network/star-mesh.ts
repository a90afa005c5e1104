import type { OhmsWork } from './ohms-work.ts'

/** A conductance that a network has is never rounded away to none. */
const smallestPerOhm = 1e-290

/**
 * Factors the conductance matrix in `work` into L·D·Lᵀ by taking out one node after another: the star of conductances
 * at the node becomes a mesh between its neighbours (Rosen, J. IEE 62, 1924). This is Gaussian elimination; the matrix
 * is diagonally dominant by columns, so partial pivoting would always take the diagonal and no search for pivots is
 * needed. The diagonal is summed from the remaining conductances instead of subtracted down to, so that a leak of
 * megohms beside a joint of milliohms keeps its digits (Grassmann, Taksar and Heyman, Operations Research 33, 1985).
 * The node with the fewest neighbours goes first (Tinney and Walker, Proc. IEEE 55, 1967), which leaves few factors.
 */
export const eliminate = (work: OhmsWork, size: number): void => {
  const { degree, stepOf, firstFactor } = work
  stepOf.fill(-1, 0, size)
  firstFactor[0] = 0
  for (let step = 0; step < size; step++) {
    const node = fewestNeighbours(degree, stepOf, size)
    stepOf[node] = step
    takeOut(work, size, node, step)
  }
}

const fewestNeighbours = (degree: Int32Array, stepOf: Int32Array, size: number): number => {
  let best = -1
  let fewest = size
  for (let node = 0; node < size; node++) {
    if (stepOf[node] >= 0 || degree[node] >= fewest) continue
    best = node
    fewest = degree[node]
    if (fewest <= 1) break
  }
  return best
}

const takeOut = (work: OhmsWork, size: number, node: number, step: number): void => {
  const { perOhm, degree, neighbour, ohm, firstFactor, factorPlace, factor } = work
  const first = firstFactor[step]
  const count = degree[node]
  const row = node * size
  let sum = 0
  for (let i = 0; i < count; i++) sum += perOhm[row + neighbour[row + i]]
  ohm[step] = count === 0 ? 0 : 1 / sum
  firstFactor[step + 1] = first + count
  for (let i = 0; i < count; i++) {
    const near = neighbour[row + i]
    // The node for now: its place is known only at the end.
    factorPlace[first + i] = near
    factor[first + i] = perOhm[row + near] / sum
    forget(work, size, near, node)
  }
  for (let i = 1; i < count; i++) {
    const a = neighbour[row + i]
    for (let j = 0; j < i; j++) addConductance(work, size, a, neighbour[row + j], perOhm[row + a] * factor[first + j])
  }
}

const forget = ({ degree, neighbour }: OhmsWork, size: number, node: number, gone: number): void => {
  const row = node * size
  let at = row
  while (neighbour[at] !== gone) at++
  neighbour[at] = neighbour[row + --degree[node]]
}

const addConductance = (work: OhmsWork, size: number, a: number, b: number, value: number): void => {
  const { perOhm, degree, neighbour } = work
  if (perOhm[a * size + b] === 0) {
    neighbour[a * size + degree[a]++] = b
    neighbour[b * size + degree[b]++] = a
  }
  const sum = perOhm[a * size + b] + (value > smallestPerOhm ? value : smallestPerOhm)
  perOhm[a * size + b] = sum
  perOhm[b * size + a] = sum
}
