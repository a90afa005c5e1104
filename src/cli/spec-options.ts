import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import type { Options } from './with-bench.ts'

/** Measures as typed, `powerW=1200 mount=round`: a number where it reads as one. Refused where one has no value. */
export const specOf = (options: Options, name = 'spec'): Result<Record<string, number | string>> => {
  const given = options[name]
  const pairs = (Array.isArray(given) ? given : []).map((one) => one.split('='))
  const bad = pairs.find(([field = '', value = '']) => field === '' || value.trim() === '')
  if (bad !== undefined)
    return refused(problem('no-value', `--${name}`, `“${bad.join('=')}” has no value`, 'Write such as powerW=1200'))
  return ok(Object.fromEntries(pairs.map(([field = '', ...rest]) => [field, valueOf(rest.join('='))])))
}

const valueOf = (text: string): number | string => (/^\d+(\.\d+)?$/.test(text.trim()) ? Number(text) : text.trim())
