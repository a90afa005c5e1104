import { emptyFlow, writeFlow, type BranchFlow } from './branch-law.ts'
import type { CompiledAir } from './compile.ts'
import { factor, makeLu, solveLu, type Lu } from './lu.ts'

/** A settled state: absolute pressures, flows and their derivatives, and the factored Jacobian of the balances. */
export type Settled = {
  readonly pressurePa: Float64Array
  readonly flows: readonly BranchFlow[]
  readonly lu: Lu
  /** Largest imbalance of any node, m³/s of room air. */
  readonly residualM3PerS: number
  readonly iterations: number
  readonly settled: boolean
}

const mostIterations = 200
const mostHalvings = 30
/** Imbalance at which the search ends: this share of the largest flow and a tenth of a cubic millimetre a second, which is rounding. */
const aimedShare = 1e-12
const aimedM3PerS = 1e-10
/** Imbalance at which a search that cannot go on counts as settled all the same. */
const acceptedShare = 1e-9
const acceptedM3PerS = 1e-8
/** No step takes away more than this share of a node's absolute pressure. */
const largestFall = 0.5

/**
 * Pressures at which what flows into each node flows out again: Newton's method on the balances of mass, each step halved until the
 * sum of squares of the imbalances falls. Every branch passes more the higher the pressure at its start and the lower at its end, so
 * the Jacobian is an M-matrix and never singular, and there is one solution.
 * @param start absolute pressures to begin from; the room's when left out
 */
export const settle = (
  compiled: CompiledAir,
  scale: Float64Array,
  speed: Float64Array,
  start?: Float64Array,
): Settled => {
  const size = compiled.nodes.length
  const work = {
    pressurePa: start === undefined ? new Float64Array(size).fill(compiled.air.pressurePa) : Float64Array.from(start),
    flows: compiled.laws.map(emptyFlow),
    balance: new Float64Array(size),
    lu: makeLu(size),
  }
  const { pressurePa, flows, balance, lu } = work
  const step = new Float64Array(size)
  const trial = new Float64Array(size)
  let merit = evaluate(compiled, scale, speed, pressurePa, flows, balance)
  let iterations = 0
  let moving = true
  while (iterations < mostIterations) {
    writeJacobian(compiled, flows, lu)
    if (!factor(lu)) break
    if (!moving || largestOf(balance) <= aimedShare * largestFlow(flows) + aimedM3PerS) break
    iterations++
    solveLu(lu, balance, step)
    let share = shareOfStep(pressurePa, step)
    moving = false
    for (let halving = 0; halving < mostHalvings && !moving; halving++, share /= 2) {
      for (let i = 0; i < size; i++) trial[i] = pressurePa[i] - share * step[i]
      const tried = evaluate(compiled, scale, speed, trial, flows, balance)
      if (tried < merit) {
        moving = true
        merit = tried
        pressurePa.set(trial)
      }
    }
    if (!moving) evaluate(compiled, scale, speed, pressurePa, flows, balance)
  }
  const residualM3PerS = largestOf(balance)
  return {
    pressurePa,
    flows,
    lu,
    residualM3PerS,
    iterations,
    settled: residualM3PerS <= acceptedShare * largestFlow(flows) + acceptedM3PerS,
  }
}

/** Flows and imbalances at these pressures; gives back the sum of squares of the imbalances. */
const evaluate = (
  { air, laws, from, to }: CompiledAir,
  scale: Float64Array,
  speed: Float64Array,
  pressurePa: Float64Array,
  flows: readonly BranchFlow[],
  balance: Float64Array,
): number => {
  balance.fill(0)
  for (let k = 0; k < laws.length; k++) {
    const a = from[k]
    const b = to[k]
    const fromPa = a < 0 ? air.pressurePa : pressurePa[a]
    const toPa = b < 0 ? air.pressurePa : pressurePa[b]
    writeFlow(laws[k], air, scale[k], speed[k], fromPa, toPa, flows[k])
    if (a >= 0) balance[a] += flows[k].q
    if (b >= 0) balance[b] -= flows[k].q
  }
  let sum = 0
  for (const value of balance) sum += value * value
  return sum
}

const writeJacobian = ({ from, to }: CompiledAir, flows: readonly BranchFlow[], { size, factors }: Lu): void => {
  factors.fill(0)
  for (let k = 0; k < flows.length; k++) {
    const a = from[k]
    const b = to[k]
    const { byFrom, byTo } = flows[k]
    if (a >= 0) factors[a * size + a] += byFrom
    if (b >= 0) factors[b * size + b] -= byTo
    if (a >= 0 && b >= 0) {
      factors[a * size + b] += byTo
      factors[b * size + a] -= byFrom
    }
  }
}

const shareOfStep = (pressurePa: Float64Array, step: Float64Array): number => {
  let share = 1
  for (let i = 0; i < step.length; i++) {
    if (step[i] > 0) share = Math.min(share, (largestFall * pressurePa[i]) / step[i])
  }
  return share
}

const largestOf = (values: Float64Array): number => values.reduce((most, value) => Math.max(most, Math.abs(value)), 0)

const largestFlow = (flows: readonly BranchFlow[]): number => {
  let most = 0
  for (const { q } of flows) most = Math.max(most, Math.abs(q))
  return most
}
