import { problem } from '../../../base/problem.ts'
import { ok, refused, type Result } from '../../../base/result.ts'

/**
 * Splits a cost by weights into whole minor units that add up to it exactly: each gets its share rounded down, and what is
 * left goes one by one to the largest remainders, the first of equals first (method of Hamilton). All weights zero: evenly.
 * @param costMinor whole, not below zero
 * @param weights whole, not below zero, such as expected prices in minor units
 * @returns one share for each weight; refused where there are none, or something is not whole
 */
export const shareCost = (costMinor: number, weights: readonly number[]): Result<readonly number[]> => {
  const isWhole = (value: number): boolean => Number.isSafeInteger(value) && value >= 0
  if (weights.length === 0) return refused(noWeights)
  if (![costMinor, ...weights].every(isWhole)) return refused(notWhole)
  const given = weights.map(BigInt)
  const used = given.some((weight) => weight > 0n) ? given : given.map(() => 1n)
  // Products of two amounts outgrow a float's 53 bits.
  const total = used.reduce((sum, weight) => sum + weight, 0n)
  const quotas = used.map((weight) => BigInt(costMinor) * weight)
  const floors = quotas.map((quota) => Number(quota / total))
  const left = costMinor - floors.reduce((sum, floor) => sum + floor, 0)
  const byRemainder = quotas.map((quota, i) => ({ i, remainder: quota % total })).toSorted(largerFirst)
  const oneMore = new Set(byRemainder.slice(0, left).map(({ i }) => i))
  return ok(floors.map((floor, i) => floor + (oneMore.has(i) ? 1 : 0)))
}

const largerFirst = (a: { readonly remainder: bigint }, b: { readonly remainder: bigint }): number =>
  a.remainder === b.remainder ? 0 : a.remainder > b.remainder ? -1 : 1

const noWeights = problem('no-weights', 'weights', 'There is nothing to split the cost over', 'Give a weight for each')
const notWhole = problem(
  'not-whole',
  'weights',
  'A cost and its weights are whole numbers, not below zero',
  'Give whole minor units',
)
