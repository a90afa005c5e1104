import { problemText, type Problem } from './problem.ts'

/** An outcome that may be refused. Refusals are values; a throw means a programmer's mistake. */
export type Result<T> = Ok<T> | Refused
export type Ok<T> = { readonly kind: 'ok'; readonly value: T }
export type Refused = { readonly kind: 'refused'; readonly problems: readonly Problem[] }

export const ok = <T>(value: T): Ok<T> => ({ kind: 'ok', value })
export const refused = (...problems: readonly Problem[]): Refused => ({ kind: 'refused', problems })

/** The value, or a throw that carries the refusal's text. For places where a refusal is a programmer's mistake. */
export const valueOf = <T>(result: Result<T>): T => {
  if (result.kind === 'ok') return result.value
  throw new Error(result.problems.map(problemText).join('\n'))
}
