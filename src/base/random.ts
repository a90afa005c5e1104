import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { uniformInt } from 'pure-rand/distribution/uniformInt'

/**
 * A seeded source of random numbers. The same seed gives the same numbers on every machine.
 * Generator: xoroshiro128+ from the pure-rand package.
 */
export type Random = {
  /** Uniform in [0, 1), 32 bits of resolution. */
  readonly uniform: () => number
  /** Standard normal (Box–Muller). */
  readonly normal: () => number
  /** Index drawn with the given weights (not necessarily summing to 1). */
  readonly index: (weights: ArrayLike<number>) => number
}

export const seededRandom = (seed: number): Random => {
  const generator = xoroshiro128plus(scattered(seed))
  const uniform = (): number => uniformInt(generator, 0, 0xffffffff) / 0x100000000
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
  const index = (weights: ArrayLike<number>): number => drawIndex(weights, uniform())
  return { uniform, normal, index }
}

/** Neighbouring seeds must give unrelated first numbers: 32-bit finalizer of MurmurHash3 (public domain, from memory). */
const scattered = (seed: number): number => {
  let h = seed | 0
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return (h ^ (h >>> 16)) >>> 0
}

const drawIndex = (weights: ArrayLike<number>, at: number): number => {
  let total = 0
  for (let i = 0; i < weights.length; i++) total += weights[i] ?? 0
  let left = at * total
  for (let i = 0; i < weights.length; i++) {
    left -= weights[i] ?? 0
    if (left < 0) return i
  }
  return weights.length - 1
}
