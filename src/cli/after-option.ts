import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import type { Options } from './with-bench.ts'

/** From where a list goes on, by `--after`; undefined from its beginning. Refused where that is no place of a list. */
export const afterOf = ({ after }: Options): Result<number | undefined> => {
  if (typeof after !== 'string') return ok(undefined)
  if (/^\d{1,10}$/.test(after)) return ok(Number(after))
  const what = `“${after}” is no place of a list`
  return refused(problem('not-a-place', '--after', what, 'Write the number that the list before it ended with'))
}
