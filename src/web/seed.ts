import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'

const mostSeed = 0xffffffff

/** A seed as typed: a whole number from 0 to 4294967295. */
export const seedFromText = (text: string): Result<number> => {
  const seed = /^\s*\d{1,10}\s*$/.test(text) ? Number(text) : NaN
  if (seed <= mostSeed) return ok(seed)
  return refused(problem('no-seed', 'seed', `“${text}” is not a seed`, `Write a whole number from 0 to ${mostSeed}`))
}
