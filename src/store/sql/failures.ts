import type { Problem } from '../../base/problem.ts'

/** How a database's failures are taken. */
export type Failures = {
  /** Whether the same writing may go through in a moment: others write meanwhile. */
  readonly passes: (fault: unknown) => boolean
  /** What a bench can do something about; null for a programmer's mistake. */
  readonly problemOf: (fault: unknown) => Problem | null
}
