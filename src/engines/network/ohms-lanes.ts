import type { OhmsTable } from './ohms-table.ts'
import type { OhmsWork } from './ohms-work.ts'

/** Pairs are solved four at a time: each factor is then fetched once for four potentials, which halves the time. */
export const lanes = 4

/** From groups to places among the potentials, which are held in the order of elimination: for the factors and the elements. */
export const placeInOrder = (work: OhmsWork, size: number, branches: number): void => {
  const { stepOf, firstFactor, factorPlace, branchFrom, branchTo } = work
  for (let at = 0; at < firstFactor[size]; at++) factorPlace[at] = lanes * stepOf[factorPlace[at]]
  for (let i = 0; i < branches; i++) {
    branchFrom[i] = lanes * stepOf[branchFrom[i]]
    branchTo[i] = lanes * stepOf[branchTo[i]]
  }
}

/** Stands in the table for a resistance that is yet to be solved. */
const joined = 1

/** Measures the pairs from `first` on, as many as there are lanes. */
export const measureLanes = (
  work: OhmsWork,
  pairs: Int32Array,
  first: number,
  size: number,
  branches: number,
  out: OhmsTable,
): void => {
  const { merged, part, slot, stepOf, potential } = work
  const end = Math.min(first + lanes, out.pairs)
  potential.fill(0, 0, lanes * size)
  for (let pair = first; pair < end; pair++) {
    const a = pairs[2 * pair]
    const b = pairs[2 * pair + 1]
    out.resistanceOhm[pair] = part[a] !== part[b] ? Infinity : merged[a] === merged[b] ? 0 : joined
    if (out.resistanceOhm[pair] !== joined) continue
    potential[lanes * stepOf[slot[a]] + pair - first] = 1
    potential[lanes * stepOf[slot[b]] + pair - first] = -1
  }
  solveLanes(work, size)
  for (let pair = first; pair < end; pair++) {
    if (out.resistanceOhm[pair] !== joined) continue
    const lane = pair - first
    const a = lanes * stepOf[slot[pairs[2 * pair]]] + lane
    const b = lanes * stepOf[slot[pairs[2 * pair + 1]]] + lane
    out.resistanceOhm[pair] = potential[a] - potential[b]
    fillShare(work, branches, lane, out.share, pair * out.elements)
  }
}

const fillShare = (work: OhmsWork, count: number, lane: number, share: Float64Array, row: number): void => {
  const { potential, branchElement, branchFrom, branchTo, branchPerOhm } = work
  for (let i = 0; i < count; i++) {
    const volt = potential[branchFrom[i] + lane] - potential[branchTo[i] + lane]
    share[row + branchElement[i]] = volt * (volt * branchPerOhm[i])
  }
}

/**
 * Solves with the factors in `work`, four right-hand sides side by side: on entry `potential` holds the injected
 * currents (A), on leaving the potentials (V), both by step and lane. The last node of a part is its zero of potential.
 */
const solveLanes = (work: OhmsWork, size: number): void => {
  forward(work, size)
  backward(work, size)
}

const forward = ({ potential, firstFactor, factorPlace, factor }: OhmsWork, size: number): void => {
  for (let step = 0; step < size; step++) {
    const here = lanes * step
    const i0 = potential[here]
    const i1 = potential[here + 1]
    const i2 = potential[here + 2]
    const i3 = potential[here + 3]
    if (i0 === 0 && i1 === 0 && i2 === 0 && i3 === 0) continue
    for (let at = firstFactor[step]; at < firstFactor[step + 1]; at++) {
      const there = factorPlace[at]
      const part = factor[at]
      potential[there] += part * i0
      potential[there + 1] += part * i1
      potential[there + 2] += part * i2
      potential[there + 3] += part * i3
    }
  }
}

const backward = ({ potential, firstFactor, factorPlace, factor, ohm }: OhmsWork, size: number): void => {
  for (let step = size - 1; step >= 0; step--) {
    const here = lanes * step
    let v0 = potential[here] * ohm[step]
    let v1 = potential[here + 1] * ohm[step]
    let v2 = potential[here + 2] * ohm[step]
    let v3 = potential[here + 3] * ohm[step]
    for (let at = firstFactor[step]; at < firstFactor[step + 1]; at++) {
      const there = factorPlace[at]
      const part = factor[at]
      v0 += part * potential[there]
      v1 += part * potential[there + 1]
      v2 += part * potential[there + 2]
      v3 += part * potential[there + 3]
    }
    potential[here] = v0
    potential[here + 1] = v1
    potential[here + 2] = v2
    potential[here + 3] = v3
  }
}
