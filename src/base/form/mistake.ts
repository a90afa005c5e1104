import type { $ZodIssue, $ZodType } from 'zod/v4/core'
import type { Path } from './place-text.ts'

/** What is wrong, and the mend. */
export type Words = readonly [what: string, mend: string]

/** One mistake that a schema finds, with all that is needed to speak of it. */
export type Mistake<Issue extends $ZodIssue = $ZodIssue> = {
  readonly issue: Issue
  /** Its place, seen from the whole input. */
  readonly path: Path
  /** What stands there; undefined where nothing does. */
  readonly value: unknown
  /** The schema of the place; null where it is not known. */
  readonly schema: $ZodType | null
  /** The field's name, or what the whole input is called. */
  readonly name: string
}

export type MistakeOf<Code extends $ZodIssue['code']> = Mistake<Extract<$ZodIssue, { readonly code: Code }>>
