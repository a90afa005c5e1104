import type { ZodType } from 'zod'
import { formProblems } from './form/form-problems.ts'
import type { Path } from './form/place-text.ts'
import { ok, refused, type Result } from './result.ts'

/**
 * Parses outside input once, at the door. A refusal has a problem for each mistake of form, in plain words: what is wrong, its
 * place in the input, and what would be right there.
 * @param what how to name the whole input in the message, such as `blueprint`
 * @param place how a place in it is written; left out, as in `moves[2].minutes`
 */
export const parse = <T>(
  schema: ZodType<T>,
  input: unknown,
  what: string,
  place?: (path: Path) => string,
): Result<T> => {
  const parsed = schema.safeParse(input)
  if (parsed.success) return ok(parsed.data)
  return refused(...formProblems({ schema, input, what, place }, parsed.error.issues))
}
