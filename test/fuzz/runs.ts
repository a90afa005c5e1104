import { expect } from 'vitest'

/** How many cases of each kind, and from which seed: FUZZ_RUNS and FUZZ_SEED, so that a find can be had again and a night can be spent on it. */
export const runsOf = (usual: number): number => Number(process.env['FUZZ_RUNS'] ?? usual)
export const seed = Number(process.env['FUZZ_SEED'] ?? Date.now() % 2 ** 31)
console.log(`fuzz: seed ${seed} (FUZZ_SEED=${seed} FUZZ_RUNS=… npx vitest run test/fuzz)`)

/** A case that takes longer hangs, even where others use the machine too. */
const longestMs = 4000
const mostGrowthBytes = 600 * 1024 * 1024

/** Runs one case: it may be refused, but not throw, and not take too long. */
export const inTime = async <T>(what: string, work: () => T | Promise<T>): Promise<T> => {
  const start = performance.now()
  const value = await work()
  const ms = performance.now() - start
  if (ms > longestMs) expect.fail(`${what} took ${Math.round(ms)} ms`)
  return value
}

/** Holds the memory against what it was at first. */
export const memoryBound = (): (() => void) => {
  const before = process.memoryUsage().rss
  return () => expect(process.memoryUsage().rss - before).toBeLessThan(mostGrowthBytes)
}
