import type { ZodType } from 'zod'
import { problem, type Problem } from './problem.ts'
import { ok, refused, type Result } from './result.ts'

/**
 * Parses outside input once, at the door. A refusal names the path of each fault in the input.
 * @param what how to name the whole input in the message, such as `blueprint`
 */
export const parse = <T>(schema: ZodType<T>, input: unknown, what: string): Result<T> => {
  const parsed = schema.safeParse(input)
  if (parsed.success) return ok(parsed.data)
  return refused(...parsed.error.issues.map((issue) => issueProblem(issue, what)))
}

const issueProblem = (
  issue: { path: readonly PropertyKey[]; message: string; code?: string | undefined },
  what: string,
): Problem => {
  const path = issue.path.map(String).join('.')
  const mend = `See the JSON Schema of ${article(what)} ${what}`
  return problem('not-of-the-form', path === '' ? what : `${what} ${path}`, trimStop(issue.message), mend)
}

const trimStop = (text: string): string => text.replace(/\.$/, '')

const article = (noun: string): string => (/^[aeiou]/i.test(noun) ? 'an' : 'a')
